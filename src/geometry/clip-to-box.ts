import type { Box } from './edge-box.ts';
import type { Polygon, Polygons } from './polygons.ts';
import type { Vec } from './vec.ts';

/**
 * What lies of a solid in a box. Within it outlines are the very same; along its sides a piece may hang together with
 * another by edges that run back on themselves, which enclose nothing. (Sutherland and Hodgman, Reentrant polygon
 * clipping, 1974.)
 */
export function clipToBox(polygons: Polygons, { minX, minY, maxX, maxY }: Box): Polygons {
  return polygons
    .map((polygon) => keep(polygon, 'x', 1, minX))
    .map((polygon) => keep(polygon, 'x', -1, maxX))
    .map((polygon) => keep(polygon, 'y', 1, minY))
    .map((polygon) => keep(polygon, 'y', -1, maxY))
    .filter((polygon) => polygon.length > 2);
}

/** The part of a polygon at or above a level of one axis, or for `sign` −1 at or below it. */
function keep(polygon: Polygon, axis: 'x' | 'y', sign: 1 | -1, level: number): Polygon {
  const isIn = (p: Vec): boolean => sign * (p[axis] - level) >= 0;
  const kept: Vec[] = [];
  let before = polygon.at(-1);
  for (const p of polygon) {
    if (before !== undefined && isIn(before) !== isIn(p)) kept.push(crossing(before, p, axis, level));
    if (isIn(p)) kept.push(p);
    before = p;
  }
  return kept;
}

function crossing(a: Vec, b: Vec, axis: 'x' | 'y', level: number): Vec {
  const t = (level - a[axis]) / (b[axis] - a[axis]);
  return axis === 'x' ? { x: level, y: a.y + t * (b.y - a.y) } : { x: a.x + t * (b.x - a.x), y: level };
}

/** The box round a solid, and so much more on every side; mm. */
export function boxRound(polygons: Polygons, byMm: number): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const polygon of polygons) {
    for (const { x, y } of polygon) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return { minX: minX - byMm, minY: minY - byMm, maxX: maxX + byMm, maxY: maxY + byMm };
}
