import { type Doubt, doubt } from '../../clearance/verify/verify-doubt.ts';
import { OutlineShape } from '../../clearance/verify/verify-shape.ts';
import { circleLoop, type Region } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { loopsOf } from '../../geometry/polygons/polygons.ts';
import type { Casting, DepthRange } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import { parseThread } from '../../trade/threads.ts';
import type { CutBand, PartCut } from '../part-cut.ts';
import { placesIn } from './verify-cutter.ts';

/** Points lie between stations, mm. */
const foundWithinMm = 0.02;

/** A point this far within metal is in it, mm. */
const wellInMm = 0.01;

/** One band of a cut, as a shape with the range of depth it is over. */
interface CutShape {
  readonly section: string;
  readonly depth: DepthRange | null;
  readonly shape: OutlineShape;
  readonly places: readonly Vec[];
}

/** A cut against what must stay: metal that was not offered, regions not to be cut, hollows and holes with their walls. */
export function guardDoubts(casting: Casting, cut: PartCut, fit: Fit): Doubt[] {
  const cuts = cut.sections.flatMap(({ id, bands }) => bands.map((band) => shapeOf(id, band)));
  return [...bitten(casting, cuts), ...walls(casting, cut, cuts, fit)];
}

function shapeOf(section: string, { depth, planned }: CutBand): CutShape {
  const shape = new OutlineShape(loopsOf(planned));
  const edge = shape.stations.flatMap((runs, outline) => runs.map((run) => shape.pointAt(run, outline)));
  const places = [...edge, ...placesIn(shape, { fromMm: 0, toMm: 1 }).map(({ at }) => at)];
  return { section, depth, shape, places };
}

/** Metal that stays, and of which a cut takes something: points of either outline that lie in both. */
function bitten({ sections, doNotCut }: Casting, cuts: readonly CutShape[]): Doubt[] {
  const kept = [...sections.filter(({ mayCut }) => !mayCut), ...doNotCut];
  return kept.flatMap(({ id, depth, loops }) => {
    const shape = new OutlineShape(loops);
    const own = shape.stations.flatMap((runs, outline) => runs.map((run) => shape.pointAt(run, outline)));
    return cuts
      .filter((cut) => apartMm(cut.depth, depth) === 0 && !onlyMeet(cut.depth, depth))
      .flatMap((cut): Doubt[] => {
        const at = [...cut.places, ...own].find(
          (p) => shape.gapMm(p, 1) < -wellInMm && cut.shape.gapMm(p, 1) < -wellInMm,
        );
        if (at === undefined) return [];
        const text = `The cut in "${cut.section}" takes metal of "${id}", which must stay.`;
        return [doubt('cut-what-must-stay', 'plan', text, { at: [at.x, at.y] })];
      });
  });
}

/** What a hole or a hollow is guarded by, worked out here once more. */
interface Keepout {
  readonly id: string;
  readonly depth: DepthRange | null;
  readonly loops: Region;
  readonly keepMm: number;
}

function keptOf({ holes, hollows }: Casting, { minWallMm }: Fit): Keepout[] {
  const least = minWallMm ?? 0;
  return [
    ...hollows.map(({ id, depth, loops, keepWallMm }) => ({
      id,
      depth,
      loops,
      keepMm: Math.max(keepWallMm ?? 0, least),
    })),
    ...holes.flatMap(({ id, at, depth, diameterMm, thread, mayBreak, keepWallMm }): Keepout[] => {
      const across = Math.max(diameterMm ?? 0, thread === null ? 0 : (parseThread(thread)?.majorMm ?? 0));
      if (mayBreak || across === 0) return [];
      const asked = keepWallMm === null && minWallMm === null ? across / 2 : Math.max(keepWallMm ?? 0, least);
      return [{ id, depth, loops: [circleLoop(at, across / 2)], keepMm: asked }];
    }),
  ];
}

/** Walls nearer than told, and walls that were not told of though they are nearer than is to be kept. */
function walls(casting: Casting, cut: PartCut, cuts: readonly CutShape[], fit: Fit): Doubt[] {
  return keptOf(casting, fit).flatMap((kept): Doubt[] => {
    const shape = new OutlineShape(kept.loops);
    const found = cuts
      .flatMap((one) =>
        one.places.map((at) => ({
          at,
          mm: Math.hypot(Math.max(0, shape.gapMm(at, 100)), apartMm(one.depth, kept.depth)),
        })),
      )
      .reduce((a, b) => (b.mm < a.mm ? b : a), { at: { x: 0, y: 0 }, mm: Number.POSITIVE_INFINITY });
    const told = cut.walls.find(({ hollow }) => hollow === kept.id);
    const claimedMm = told?.nominalMm ?? kept.keepMm;
    if (found.mm >= claimedMm - foundWithinMm && (found.mm >= kept.keepMm - foundWithinMm || told?.holds === false))
      return [];
    const text = `The wall to "${kept.id}" is ${found.mm} mm.`;
    return [doubt('wall', 'plan', text, { claimedMm, foundMm: found.mm, at: [found.at.x, found.at.y] })];
  });
}

const apartMm = (a: DepthRange | null, b: DepthRange | null): number =>
  a === null || b === null ? 0 : Math.max(0, a.fromMm - b.toMm, b.fromMm - a.toMm);

/** Ends that are worked out on two ways may miss one another by a hair. */
const onlyMeet = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a !== null && b !== null && Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm) < 2e-6;
