import type { CircleLoop, Loop } from '../geometry/plane/loop.ts';
import { distance, type Vec } from '../geometry/plane/vec.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import type { HoleKind } from '../job/casting.ts';
import { isCircle } from './holes.ts';

/** A hole of which a drawing tells where and how large it is, mm, and not what it is. */
export interface UntoldHole {
  readonly at: Vec;
  /** Null where that is not told either. */
  readonly diameterMm: number | null;
}

/** So many times as large as the next: no bolt goes through it; common practice, no source. */
const farLarger = 2;

/**
 * What holes are by size and place: the largest is the bore where it goes round the axis or is far larger than the rest,
 * every other a bolt's. Dowels look like bolts, so none is ever proposed for one.
 */
export function kindsProposed(holes: readonly UntoldHole[], axis: Vec): HoleKind[] {
  const sizes = holes.map(({ diameterMm }) => diameterMm ?? 0);
  const [largest = 0, next = 0] = [...sizes].sort((a, b) => b - a);
  const isBore = ({ at, diameterMm }: UntoldHole): boolean =>
    diameterMm === largest &&
    largest > next &&
    (distance(at, axis) < largest / 2 || (next > 0 && largest >= farLarger * next));
  return holes.map((hole) => (isBore(hole) ? 'bore' : 'bolt'));
}

/** The circles drawn in the metal of a section: a boss stands alone. */
export const circlesInMetal = (loops: readonly Loop[]): CircleLoop[] =>
  loops
    .filter(isCircle)
    .filter((circle) => isOdd(loops.filter((loop) => loop !== circle && isRound(loop, circle.centre)).length));

const isOdd = (count: number): boolean => count % 2 === 1;

/** Far below what a hole keeps from any edge. */
const roughMm = 0.1;

/** Whether an outline goes round a point: the edges to the right of it are odd in number. */
function isRound(loop: Loop, { x, y }: Vec): boolean {
  if (loop.kind === 'circle') return distance(loop.centre, { x, y }) < loop.radius;
  const corners = polygonise([loop], roughMm, 'outside').flat();
  const crossed = corners.filter((a, i) => {
    const b = corners[(i + 1) % corners.length] as Vec;
    return a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x);
  });
  return isOdd(crossed.length);
}
