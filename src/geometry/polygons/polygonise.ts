import { appendArc, type Side } from '../plane/arc-points.ts';
import type { Edge } from '../plane/edge.ts';
import type { Region } from '../plane/loop.ts';
import type { Vec } from '../plane/vec.ts';
import { metalOnLeft, type Outline } from './metal-on-left.ts';
import type { Polygon, Polygons } from './polygons.ts';

/**
 * A region of lines and arcs as polygons that contain it (`outside`) or lie in it (`inside`), arcs within
 * `toleranceMm`. Where outlines pass closer than that the polygons may overlap; solid by positive winding.
 */
export const polygonise = (region: Region, toleranceMm: number, side: Side): Polygons =>
  metalOnLeft(region).map((outline) => polygonOf(outline, toleranceMm, side));

/** One closed outline, metal on the left, as a polygon that errs to the asked side by no more than `toleranceMm`. */
export function polygonOf(outline: Outline, toleranceMm: number, side: Side): Polygon {
  const points: Vec[] = [];
  for (const edge of outline) appendEdge(points, edge, toleranceMm, side);
  return points;
}

/** Appends an edge of a closed outline as points, its end left to the next. */
export function appendEdge(to: Vec[], edge: Edge, toleranceMm: number, side: Side): void {
  to.push(edge.a);
  if (edge.kind === 'arc') appendArc(to, edge.a, edge.centre, edge.sweepRad, toleranceMm, side);
}
