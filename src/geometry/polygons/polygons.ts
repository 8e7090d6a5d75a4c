import type { Side } from '../plane/arc-points.ts';
import { type PathLoop, polygonLoop } from '../plane/loop.ts';
import { distance, type Vec } from '../plane/vec.ts';
import type { Outline } from './metal-on-left.ts';

/** A closed polygon through its points, mm. */
export type Polygon = readonly Vec[];

/** A solid by positive winding: outlines run anticlockwise, holes clockwise, so that metal lies on the left. */
export type Polygons = readonly Polygon[];

/** Area by the shoelace formula about the first point, mm²; negative for a clockwise polygon. */
export function signedAreaMm2(polygon: Polygon): number {
  const [origin] = polygon;
  if (origin === undefined) return 0;
  let twice = 0;
  let previous = origin;
  for (const p of polygon) {
    twice += (previous.x - origin.x) * (p.y - origin.y) - (previous.y - origin.y) * (p.x - origin.x);
    previous = p;
  }
  return twice / 2;
}

/** The area of a solid, holes taken off, mm²; its polygons must not overlap. */
export const areaMm2 = (polygons: Polygons): number => polygons.reduce((sum, p) => sum + signedAreaMm2(p), 0);

/** A sliver so thin is no shape, only what rounding left of one. */
const thinMm = 2e-6;

/**
 * A solid without slivers: holes thinner than `thinnerThanMm` are filled where metal may be added (`outside`), pieces
 * thinner than that are dropped where it may be lost (`inside`). Thickness is twice the area over the length round it.
 */
export const withoutSlivers = (polygons: Polygons, side: Side, thinnerThanMm = thinMm): Polygons =>
  polygons.filter((polygon) => {
    const area = signedAreaMm2(polygon);
    if (area > 0 === (side === 'outside')) return area !== 0;
    return 2 * Math.abs(area) > thinnerThanMm * lengthRoundMm(polygon);
  });

const lengthRoundMm = (polygon: Polygon): number =>
  polygon.reduce((sum, p, i) => sum + distance(p, polygon[i === 0 ? polygon.length - 1 : i - 1] as Vec), 0);

export const loopsOf = (polygons: Polygons): PathLoop[] => polygons.map(polygonLoop);

/** The outlines of a solid, metal on the left as it is. */
export const outlinesOf = (polygons: Polygons): Outline[] =>
  polygons.map((polygon) => polygon.map((a, i) => ({ kind: 'line', a, b: polygon[(i + 1) % polygon.length] as Vec })));
