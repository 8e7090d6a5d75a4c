import type { LoopFile } from '../../../src/files/part-file.ts';
import { cross, distance, lerp, polar, sub, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import type { Polygon, Polygons } from '../../../src/geometry/polygons/polygons.ts';
import type { Wander } from './wander.ts';

const radians = (deg: number): number => (deg * Math.PI) / 180;

/** A rectangle, anticlockwise. */
export const box = (x0: number, y0: number, x1: number, y1: number): Polygon => [
  vec(x0, y0),
  vec(x1, y0),
  vec(x1, y1),
  vec(x0, y1),
];

/** A piece of a ring about a centre, from one angle to another, degrees. */
export function ringPiece(inner: number, outer: number, fromDeg: number, toDeg: number, centre = vec(0, 0)): Polygon {
  const steps = Math.max(2, Math.ceil(toDeg - fromDeg));
  const along = (radius: number): Vec[] =>
    Array.from({ length: steps + 1 }, (_, i) =>
      polar(centre, radius, radians(fromDeg + (i / steps) * (toDeg - fromDeg))),
    );
  return [...along(outer), ...along(inner).toReversed()];
}

export const disc = (centre: Vec, radiusMm: number): Polygon =>
  Array.from({ length: 48 }, (_, i) => polar(centre, radiusMm, (2 * Math.PI * i) / 48));

/** The same outline with no edge longer than asked. */
export const subdivided = (polygon: Polygon, longestMm: number): Polygon =>
  polygon.flatMap((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec;
    const steps = Math.max(1, Math.ceil(distance(a, b) / longestMm));
    return Array.from({ length: steps }, (_, step) => lerp(a, b, step / steps));
  });

/** The centre of area. */
export function centreOf(polygon: Polygon): Vec {
  const origin = polygon[0] ?? vec(0, 0);
  let [x, y, twice] = [0, 0, 0];
  for (const [i, p] of polygon.entries()) {
    const [a, b] = [sub(p, origin), sub(polygon[(i + 1) % polygon.length] as Vec, origin)];
    const area = cross(a, b);
    x += area * (a.x + b.x);
    y += area * (a.y + b.y);
    twice += area;
  }
  return vec(origin.x + x / (3 * twice), origin.y + y / (3 * twice));
}

/** Short enough to follow every wander. */
const edgeMm = 2;

export const carried = (polygons: Polygons, by: Wander): Polygons =>
  polygons.map((polygon) => subdivided(polygon, edgeMm).map(by));

/** Outlines as a part file has them, without vertices that crowd. */
export const loopFilesOf = (polygons: Polygons): LoopFile[] =>
  polygons.map((polygon) => uncrowded(polygon).map(({ x, y }) => [rounded(x), rounded(y)]));

const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;

function uncrowded(polygon: Polygon): Polygon {
  let last = polygon.at(-1);
  const kept = polygon.filter((at) => {
    if (last !== undefined && distance(last, at) < edgeMm / 4) return false;
    last = at;
    return true;
  });
  const [first, end] = [kept[0], kept.at(-1)];
  return first && end && distance(first, end) < edgeMm / 4 ? kept.slice(1) : kept;
}
