import { circleLoop } from '../geometry/plane/loop.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, pieces, union } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { areaMm2, outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Hole } from '../job/casting.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { holeDiameterMm } from '../plan/walls/guards.ts';
import type { Bench } from './marking-out-bench.ts';
import { plateRound } from './marking-out-hull.ts';

/** Gauges are cut from ply this thick, mm. */
export const plyMm = 3;

/** The metal of a casting that shares depth with a range; a null range is every depth. */
export function metalWithin({ sections }: Pick<Casting, 'sections'>, range: DepthRange | null): Polygons {
  const shares = sections.filter(
    ({ depth }) => depth === null || range === null || (depth.fromMm < range.toMm && range.fromMm < depth.toMm),
  );
  return union(shares.flatMap(({ loops }) => polygonise(loops, toleranceMm, 'outside')));
}

/** Ply round a hole it is located by, and round a pin, mm. */
const roundHoleMm = 9;
const leastHoleRadiusMm = 5;
const roundPinMm = 12;
/** What stands proud of the face is cleared by this, mm. */
const clearMm = 1;
const roughMm = 0.02;

/** A plate that lies on the face, over the holes it is located by and out to the pins; null where it is cut in two. */
export function locatingPlate(bench: Bench, pins: readonly Vec[]): Polygons | null {
  const { present, holes } = bench;
  if (holes === null || pins.length === 0) return null;
  const discs = [
    ...holes.map((hole) => ({ at: hole.at, radiusMm: radiusOf(hole) + roundHoleMm })),
    ...pins.map((at) => ({ at, radiusMm: roundPinMm })),
  ];
  const proud = metalWithin(present, { fromMm: -plyMm, toMm: 0 });
  const standing = present.holes.filter((hole) => !holes.includes(hole) && mayStandProud(hole, bench));
  const cleared = [
    ...offset(outlinesOf(proud), clearMm, roughMm, 'outside').polygons,
    ...standing.flatMap((hole) => polygonise([circleLoop(hole.at, standingMm(hole) + clearMm)], roughMm, 'outside')),
  ];
  const [plate, ...others] = pieces(difference([plateRound(discs)], union(cleared))).toSorted(
    (a, b) => areaMm2(b) - areaMm2(a),
  );
  return plate === undefined || others.some((other) => areaMm2(other) > areaMm2(plate) / 4) ? null : plate;
}

/** A dowel, a stud, or the flange of a crank that parts turn with, in the bore it turns in. */
export const mayStandProud = ({ id, kind, proudMm }: Hole, { joint, cut }: Bench): boolean =>
  proudMm > 0 || kind === 'stud' || (cut === 'fixed' && joint.rotating.length > 0 && id === joint.fit.axisHole);

/** Its radius; that of an M10 where nobody said, mm. */
const standingMm = (hole: Hole): number => (holeDiameterMm(hole) ?? 10) / 2;

const radiusOf = ({ diameterMm }: Hole): number => Math.max(leastHoleRadiusMm, (diameterMm ?? 0) / 2);

/** Where a piece of ply lies for a band: its near side at this depth, held by a spacer of this height, mm. */
export interface Level {
  readonly depthMm: number;
  readonly spacerMm: number;
  /** Under the plate that lies on the face, or standing on it. */
  readonly held: 'under' | 'over';
}

/** Where to hold a profile gauge: at either end of its band, or once where the band is no deeper than the ply. */
export function levelsOf(depth: DepthRange | null): Level[] {
  if (depth === null) return [{ depthMm: 0, spacerMm: 0, held: 'under' }];
  const depths = [depth.fromMm, Math.max(depth.fromMm, depth.toMm - plyMm)];
  return [...new Set(depths)].map((depthMm) =>
    depthMm >= 0
      ? { depthMm, spacerMm: depthMm, held: 'under' }
      : { depthMm, spacerMm: Math.max(0, -depthMm - 2 * plyMm), held: 'over' },
  );
}
