import { circleLoop } from '../geometry/plane/loop.ts';
import { cross, distance, sub, type Vec } from '../geometry/plane/vec.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import type { Polygon } from '../geometry/polygons/polygons.ts';

/** The least convex polygon round points, anticlockwise (Andrew's monotone chain, 1979). */
export function convexHull(points: readonly Vec[]): Polygon {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const lower = chain(sorted);
  const upper = chain(sorted.toReversed());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(sorted: readonly Vec[]): Vec[] {
  const hull: Vec[] = [];
  for (const p of sorted) {
    while (hull.length > 1 && turn(hull, p) <= 0) hull.pop();
    hull.push(p);
  }
  return hull;
}

function turn(hull: readonly Vec[], p: Vec): number {
  const [before, last] = [hull.at(-2) as Vec, hull.at(-1) as Vec];
  return cross(sub(last, before), sub(p, last));
}

/** How far round corners of a plate may be from round, mm: it is only cut to with a saw. */
const roughMm = 0.02;

/** A plate stretched round discs. */
export const plateRound = (discs: readonly { readonly at: Vec; readonly radiusMm: number }[]): Polygon =>
  convexHull(discs.flatMap(({ at, radiusMm }) => polygonise([circleLoop(at, radiusMm)], roughMm, 'outside').flat()));

/** The two of some points that lie farthest apart; null for fewer than two. */
export function farthestApart(points: readonly Vec[]): readonly [Vec, Vec] | null {
  const corners = convexHull(points);
  let best: readonly [Vec, Vec] | null = null;
  for (const [i, a] of corners.entries()) {
    for (const b of corners.slice(i + 1)) {
      if (best === null || distance(a, b) > distance(...best)) best = [a, b];
    }
  }
  return best;
}
