import { appendArc, type Side } from '../plane/arc-points.ts';
import type { Edge } from '../plane/edge.ts';
import { boxAroundEdges } from '../plane/edge-box.ts';
import { add, cross, distance, dot, scale, sub, type Vec, vec } from '../plane/vec.ts';
import { type Outline, outlineAreaMm2, reversedOutline } from './metal-on-left.ts';
import { engineErrorMm, union } from './polygon-engine.ts';
import { type Polygon, type Polygons, withoutSlivers } from './polygons.ts';
import { closedByBall } from './rolling-ball.ts';

/** An offset solid, and how far it may lie from the true one, on the asked side. */
export interface Offset {
  readonly polygons: Polygons;
  readonly boundMm: number;
}

/**
 * A solid, told by outlines with metal on the left, with everything within `byMm` of it; for a negative `byMm` without
 * everything within that of its outside. Never smaller than the truth where it errs `outside`, never larger where
 * `inside`, but for the grid of the engine; arcs within `toleranceMm`.
 *
 * Each outline is convolved with the circle: edges move out along their normals, and at corners an arc joins them, run
 * backwards at inward ones. The winding number about a point is then the number of separate places where the solid
 * comes within reach of it, for a solid that has no hole small enough to lie within reach as a whole; such holes close
 * and are left out. (Guibas, Ramshaw and Stolfi, A kinetic framework for computational geometry, 1983.)
 */
export function offset(outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Offset {
  const curves = byMm < 0 ? shrunk(outlines, -byMm, toleranceMm, side) : grown(outlines, byMm, toleranceMm, side);
  return { polygons: withoutSlivers(union(curves), side), boundMm: toleranceMm + engineErrorMm };
}

const grown = (outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Polygons =>
  outlines
    .map((outline) => closedByBall(outline, byMm))
    .filter((outline) => !closesUp(outline, byMm))
    .map((outline) => convolved(outline, byMm, toleranceMm, side));

/** What is not metal grows: outlines run the other way round, and err to the other side. */
function shrunk(outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Polygons {
  const otherSide = side === 'outside' ? 'inside' : 'outside';
  return grown(outlines.map(reversedOutline), byMm, toleranceMm, otherSide).map((polygon) => polygon.toReversed());
}

/**
 * A hole is gone when no circle of the offset's radius fits in its box, so that none fits in it either. One that stays
 * is too large to lie in such a circle.
 */
function closesUp(outline: Outline, byMm: number): boolean {
  if (outlineAreaMm2(outline) > 0) return false;
  const { minX, minY, maxX, maxY } = boxAroundEdges(outline);
  return Math.min(maxX - minX, maxY - minY) <= 2 * byMm * (1 + 1e-9);
}

function convolved(outline: Outline, byMm: number, toleranceMm: number, side: Side): Polygon {
  const points: Vec[] = [];
  let before = outline.at(-1) as Edge;
  for (const edge of outline) {
    appendCorner(points, before, edge, byMm, toleranceMm, side);
    if (edge.kind === 'arc') {
      const { centre, radius, sweepRad } = edge;
      const start = points.at(-1) as Vec;
      if (sweepRad < 0 && radius <= byMm) appendBackwards(points, start, centre, sweepRad);
      else appendArc(points, start, centre, sweepRad, toleranceMm, side);
    }
    before = edge;
  }
  return points;
}

/**
 * An arc of the curve that runs backwards, at an inward corner or from an inward arc sharper than the offset, needs no
 * care: between it and its chords all is within the offset of that corner or arc.
 */
const appendBackwards = (to: Vec[], from: Vec, centre: Vec, sweepRad: number): void =>
  appendArc(to, from, centre, sweepRad, Number.POSITIVE_INFINITY, 'outside');

/** The offset from the end of one edge to the start of the next. */
function appendCorner(to: Vec[], before: Edge, after: Edge, byMm: number, toleranceMm: number, side: Side): void {
  const corner = after.a;
  const [from, onto] = [rightOf(before, before.b), rightOf(after, corner)];
  const turnRad = Math.atan2(cross(from, onto), dot(from, onto));
  if (turnRad < 0 && byMm * Math.tan(-turnRad / 2) <= Math.min(straightMm(before), straightMm(after)) / 2) {
    // the offsets of two long edges cross where a circle rests on both: what lies beyond would only wind back
    to.push(add(corner, scale(add(from, onto), byMm / (1 + dot(from, onto)))));
    return;
  }
  const start = add(corner, scale(from, byMm));
  to.push(start);
  if (turnRad < 0) appendBackwards(to, start, corner, turnRad);
  else appendArc(to, start, corner, turnRad, toleranceMm, side);
  to.push(add(corner, scale(onto, byMm)));
}

const straightMm = (edge: Edge): number => (edge.kind === 'line' ? distance(edge.a, edge.b) : 0);

/** The unit normal to the right of an edge at one of its ends. */
function rightOf(edge: Edge, at: Vec): Vec {
  if (edge.kind === 'arc') return scale(sub(at, edge.centre), Math.sign(edge.sweepRad) / edge.radius);
  const along = sub(edge.b, edge.a);
  return scale(vec(along.y, -along.x), 1 / Math.hypot(along.x, along.y));
}
