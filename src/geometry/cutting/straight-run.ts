import { nearestOnOutline } from '../motion/nearest-point.ts';
import type { OutlineTree } from '../motion/outline-tree.ts';
import { distance, lerp, type Vec } from '../plane/vec.ts';
import type { Polygon } from '../polygons/polygons.ts';
import { leastRunMm, runOnOutlineMm } from './tolerances.ts';

/**
 * An edge of the cut: points 0 to `end` of an outline of the metal left, run with that metal on its left. The casting's
 * own outline goes on from `end` to `after`, and comes from `before` to the ring's end.
 */
export interface CutRun {
  readonly ring: Polygon;
  /** Which point of the outline is the ring's first. */
  readonly start: number;
  readonly end: number;
  readonly before: number;
  readonly after: number;
  readonly isClosed: boolean;
}

/** The stretches of an outline of the metal left that the cut makes, each with the outline turned to start with it. */
export function cutRuns(polygon: Polygon, outline: OutlineTree): CutRun[] {
  const count = polygon.length;
  const isCut = polygon.map((a, i) => !liesOn(outline, a, polygon[(i + 1) % count] as Vec));
  if (!isCut.includes(true)) return [];
  if (!isCut.includes(false))
    return [{ ring: polygon, start: 0, end: count, before: count, after: count, isClosed: true }];
  const runs = starts(isCut)
    .map((start) => ({
      ring: [...polygon.slice(start), ...polygon.slice(0, start)],
      end: runFrom(isCut, start),
      start,
    }))
    .filter(({ ring, end }) => lengthOf(ring.slice(0, end + 1)) >= leastRunMm);
  return runs.map(({ ring, end, start }, i) => {
    // round to the run before and the one after, which may be the run itself
    const next = runs[(i + 1) % runs.length] as (typeof runs)[number];
    const last = runs.at(i - 1) as (typeof runs)[number];
    const to = (mark: number): number => (mark - start + count) % count || count;
    return { ring, start, end, after: to(next.start), before: to(last.start + last.end), isClosed: false };
  });
}

/** Where stretches of the cut begin, in order. */
const starts = (isCut: readonly boolean[]): number[] => isCut.flatMap((cut, i) => (cut && !isCut.at(i - 1) ? [i] : []));

/** How many edges the stretch has that begins there. */
function runFrom(isCut: readonly boolean[], start: number): number {
  let end = 0;
  while (isCut[(start + end) % isCut.length]) end++;
  return end;
}

const lengthOf = (points: readonly Vec[]): number =>
  points.reduce((sum, p, i) => (i === 0 ? 0 : sum + distance(points[i - 1] as Vec, p)), 0);

const liesOn = (outline: OutlineTree, a: Vec, b: Vec): boolean =>
  [0.25, 0.5, 0.75].every((t) => nearestOnOutline(outline, lerp(a, b, t)).distanceMm <= runOnOutlineMm);
