import { type Box, boxAroundEdges } from '../geometry/plane/edge-box.ts';
import { circleLoop } from '../geometry/plane/loop.ts';
import { vec } from '../geometry/plane/vec.ts';
import { difference } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { holeDiameterMm } from '../plan/walls/guards.ts';
import type { Bench } from './marking-out-bench.ts';
import { mayStandProud, metalWithin } from './marking-out-plate.ts';

/** What keeps a bridge from sitting: what is in the way of its feet, or of its notch. */
export type BridgeHindrance =
  | { readonly code: 'hole' | 'hollow' | 'proud'; readonly id: string }
  | { readonly code: 'no-face' };

/** Thinner than this nothing is in the way, mm. */
export const thinMm = 0.05;
/** Beyond the casting there is no face, mm. */
const farMm = 200;
const roughMm = 0.02;
/** A hole of unknown size is taken to be that of an M10, mm. */
const unknownMm = 10;

/** Metal, holes or places without a face, in the way of feet alone or of the notch as well. */
export interface Hindering {
  readonly why: BridgeHindrance;
  readonly at: Polygons;
  readonly ofNotch: boolean;
}

/** All of a casting that a bridge could meet once the bosses are ground down. */
export function hinderingOf(bench: Bench, bosses: readonly Polygons[], standsMm: number): readonly Hindering[] {
  const { after, present } = bench;
  const proud = after.sections.flatMap(({ id, depth, loops }): Hindering[] => {
    const highMm = depth === null ? Number.POSITIVE_INFINITY : -depth.fromMm;
    if (highMm <= thinMm) return [];
    const at = polygonise(loops, toleranceMm, 'outside');
    return [{ why: { code: 'proud', id }, at, ofNotch: highMm > standsMm + thinMm }];
  });
  const holes = present.holes.map((hole): Hindering => {
    const standing = mayStandProud(hole, bench);
    const radiusMm = (holeDiameterMm(hole) ?? unknownMm) / 2 + 1;
    const at = polygonise([circleLoop(hole.at, radiusMm)], roughMm, 'outside');
    const isHigh = standing && (hole.proudMm <= 0 || hole.proudMm > standsMm);
    return { why: { code: 'hole', id: hole.id }, at, ofNotch: isHigh };
  });
  const hollows = present.hollows
    .filter(({ depth }) => depth === null || depth.fromMm < thinMm)
    .map(({ id, loops }): Hindering => {
      return { why: { code: 'hollow', id }, at: polygonise(loops, toleranceMm, 'outside'), ofNotch: false };
    });
  const face = metalWithin(after, { fromMm: 0, toMm: thinMm });
  const { minX, minY, maxX, maxY } = boxOf([...face, ...bosses.flat()]);
  const round = rectangleOf(minX - farMm, minY - farMm, maxX + farMm, maxY + farMm);
  const noFace: Hindering = { why: { code: 'no-face' }, at: difference(round, face), ofNotch: false };
  return [...proud, ...holes, ...hollows, noFace];
}

export const boxOf = (polygons: Polygons): Box => boxAroundEdges(outlinesOf(polygons).flat());

export const rectangleOf = (minX: number, minY: number, maxX: number, maxY: number): Polygons => [
  [vec(minX, minY), vec(maxX, minY), vec(maxX, maxY), vec(minX, maxY)],
];
