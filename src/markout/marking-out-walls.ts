import { treeOf } from '../clearance/trees.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { DepthRange, Hollow } from '../job/casting.ts';
import type { WallLeft } from './marking-row.ts';

/** A wall thicker than this is not spoken of at a place, mm, unless more is to be kept; common practice, no source. */
const inReachMm = 25;

/** The distance in space from a place in a band to a hollow, mm; 0 inside it. */
export function wallMm(hollow: Hollow, at: Vec, band: DepthRange | null): number {
  const tree = treeOf(hollow.loops);
  const inPlane = regionContains(tree, at.x, at.y) ? 0 : nearestOnOutline(tree, at).distanceMm;
  return Math.hypot(inPlane, gapMm(band, hollow.depth));
}

/** The wall that a place of the planned line, and of the last line beside it, leave to the nearest hollow in reach. */
export function wallLeft(
  hollows: readonly Hollow[],
  planned: Vec,
  last: Vec,
  band: DepthRange | null,
  handErrorMm: number,
): WallLeft | null {
  const walls = hollows
    .map((hollow) => ({ hollow, nominalMm: wallMm(hollow, planned, band) }))
    .filter(({ hollow, nominalMm }) => isInReach(hollow, nominalMm))
    .sort((a, b) => a.nominalMm - b.nominalMm);
  const [nearest] = walls;
  if (nearest === undefined) return null;
  const { hollow, nominalMm } = nearest;
  const worstMm = wallMm(hollow, last, band) - hollow.traceErrorMm - handErrorMm;
  return { hollow: hollow.id, nominalMm, wallMm: worstMm };
}

export const isInReach = ({ keepWallMm }: Hollow, mm: number): boolean =>
  mm <= Math.max(inReachMm, 2 * (keepWallMm ?? 0));

/** The gap between two ranges of depth; without depth, every depth. */
const gapMm = (a: DepthRange | null, b: DepthRange | null): number =>
  a === null || b === null ? 0 : Math.max(0, a.fromMm - b.toMm, b.fromMm - a.toMm);
