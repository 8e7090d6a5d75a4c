import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Polygon } from '../geometry/polygons.ts';
import { lerp, type Vec } from '../geometry/vec.ts';

/**
 * An edge of the cut: points 0 to `end` of an outline of the metal left, run with that metal on its left. The casting's
 * own outline goes on from `end` to `after`, and comes from `before` to the ring's end.
 */
export interface CutRun {
  readonly ring: Polygon;
  readonly end: number;
  readonly before: number;
  readonly after: number;
  readonly isClosed: boolean;
}

/** An edge that keeps within this of the outline as it was is no edge of the cut, mm. */
const onOutlineMm = 1e-4;

/** The stretches of an outline of the metal left that the cut makes, each with the outline turned to start with it. */
export function cutRuns(polygon: Polygon, outline: OutlineTree): CutRun[] {
  const count = polygon.length;
  const isCut = polygon.map((a, i) => {
    const middle = lerp(a, polygon[(i + 1) % count] as Vec, 0.5);
    return nearestOnOutline(outline, middle).distanceMm > onOutlineMm;
  });
  if (!isCut.includes(true)) return [];
  if (!isCut.includes(false)) return [{ ring: polygon, end: count, before: count, after: count, isClosed: true }];
  const cutAt = (i: number): boolean => isCut[(i + count) % count] as boolean;
  return polygon.flatMap((_, start) => {
    if (!cutAt(start) || cutAt(start - 1)) return [];
    let [end, after, before] = [0, 0, count];
    while (cutAt(start + end)) end++;
    for (after = end; after < count && !cutAt(start + after); ) after++;
    while (before > end && !cutAt(start + before - 1)) before--;
    return [{ ring: [...polygon.slice(start), ...polygon.slice(0, start)], end, before, after, isClosed: false }];
  });
}
