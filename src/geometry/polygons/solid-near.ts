import { type Box, boxGrown } from '../plane/edge-box.ts';
import { type Vec, vec } from '../plane/vec.ts';
import type { Polygon, Polygons } from './polygons.ts';

/**
 * A solid told by no more than it takes to be the same in a box; beyond the box it may be anything. Edges that come into
 * the box stay as they are, to the last bit: of vertices beyond one side in a row only the first and the last are kept,
 * and what is drawn between those keeps out of the box and goes round it the same way.
 */
export function solidNear(polygons: Polygons, box: Box): Polygons {
  return polygons.map((polygon) => outlineNear(polygon, box)).filter((polygon) => polygon.length > 2);
}

function outlineNear(polygon: Polygon, box: Box): Polygon {
  const [first] = polygon;
  if (first === undefined) return [];
  const kept: Vec[] = [first];
  let last = sidesBeyond(first, box);
  let all = last;
  let here = last;
  for (let i = 1; i < polygon.length; i++) {
    const p = polygon[i] as Vec;
    here = i === 1 ? sidesBeyond(p, box) : here;
    const next = sidesBeyond(i + 1 < polygon.length ? (polygon[i + 1] as Vec) : first, box);
    if ((last & here & next) === 0) {
      kept.push(p);
      last = here;
    }
    all &= here;
    here = next;
  }
  return all === 0 ? kept : [];
}

/** One bit for each side of the box that a point lies beyond. */
const sidesBeyond = ({ x, y }: Vec, { minX, minY, maxX, maxY }: Box): number =>
  (x < minX ? 1 : x > maxX ? 2 : 0) | (y < minY ? 4 : y > maxY ? 8 : 0);

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
  return boxGrown({ minX, minY, maxX, maxY }, byMm);
}

/** A box as a polygon, anticlockwise. */
export const rectangle = ({ minX, minY, maxX, maxY }: Box): Polygon => [
  vec(minX, minY),
  vec(maxX, minY),
  vec(maxX, maxY),
  vec(minX, maxY),
];
