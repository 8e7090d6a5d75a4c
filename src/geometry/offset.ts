import { appendArc, type Side } from './arc-points.ts';
import type { Edge } from './edge.ts';
import { boxAround, boxOfEdge } from './edge-box.ts';
import { type Outline, outlineAreaMm2, reversedOutline } from './metal-on-left.ts';
import { engineErrorMm, union } from './polygon-engine.ts';
import { type Polygon, type Polygons, withoutSpecks } from './polygons.ts';
import { closedByBall, type Contact, startOf } from './rolling-ball.ts';
import { add, cross, distance, dot, scale, sub, type Vec, vec } from './vec.ts';

/** An offset solid, and how far it may lie from the true one, on the asked side. */
export interface Offset {
  readonly polygons: Polygons;
  readonly boundMm: number;
}

/**
 * A solid, told by outlines with metal on the left, with everything within `byMm` of it; for a negative `byMm` without
 * everything within that of its outside. Never smaller than the truth where it errs `outside`, never larger where
 * `inside`, and within `boundMm`; arcs are exact up to `toleranceMm`.
 *
 * Each outline is convolved with the circle: edges move out along their normals, and at corners an arc joins them, run
 * backwards at inward ones. The winding number about a point is then the number of separate places where the solid
 * comes within reach of it, for a solid that has no hole small enough to lie within reach as a whole; such holes close
 * and are left out. (Guibas, Ramshaw and Stolfi, A kinetic framework for computational geometry, 1983.)
 */
export function offset(outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Offset {
  const curves = byMm < 0 ? shrunk(outlines, -byMm, toleranceMm, side) : grown(outlines, byMm, toleranceMm, side);
  return { polygons: withoutSpecks(union(curves), side), boundMm: toleranceMm + engineErrorMm };
}

const grown = (outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Polygons =>
  outlines.filter((outline) => !closesUp(outline, byMm)).map((outline) => convolved(outline, byMm, toleranceMm, side));

/** What is not metal grows: outlines run the other way round, and err to the other side. */
function shrunk(outlines: readonly Outline[], byMm: number, toleranceMm: number, side: Side): Polygons {
  const otherSide = side === 'outside' ? 'inside' : 'outside';
  return grown(outlines.map(reversedOutline), byMm, toleranceMm, otherSide).map((polygon) => polygon.toReversed());
}

/** A hole closes when no circle of the offset's radius fits in its box; then none fits in it either. */
function closesUp(outline: Outline, byMm: number): boolean {
  if (outlineAreaMm2(outline) > 0) return false;
  const { minX, minY, maxX, maxY } = boxAround(outline.map(boxOfEdge));
  return Math.min(maxX - minX, maxY - minY) <= 2 * byMm;
}

function convolved(outline: Outline, byMm: number, toleranceMm: number, side: Side): Polygon {
  const contacts = closedByBall(outline, byMm);
  const points: Vec[] = [];
  for (const [i, contact] of contacts.entries()) {
    const before = contacts[i === 0 ? contacts.length - 1 : i - 1] as Contact;
    appendCorner(points, before, contact, byMm, toleranceMm, side);
    if (contact.kind === 'edge' && contact.edge.kind === 'arc') {
      const { centre, sweepRad } = contact.edge;
      appendArc(points, points.at(-1) as Vec, centre, sweepRad, toleranceMm, side);
    }
  }
  return points;
}

/** The offset from the end of one contact to the start of the next. */
function appendCorner(to: Vec[], before: Contact, after: Contact, byMm: number, toleranceMm: number, side: Side): void {
  const corner = startOf(after);
  const [from, onto] = [normalAtEnd(before, byMm), normalAtStart(after, byMm)];
  const turnRad = Math.atan2(cross(from, onto), dot(from, onto));
  if (turnRad < 0 && byMm * Math.tan(-turnRad / 2) <= Math.min(straightMm(before), straightMm(after)) / 2) {
    // the offsets of two long edges cross where a circle rests on both: what lies beyond would only wind back
    to.push(add(corner, scale(add(from, onto), byMm / (1 + dot(from, onto)))));
    return;
  }
  const start = add(corner, scale(from, byMm));
  to.push(start);
  appendArc(to, start, corner, turnRad, toleranceMm, side);
  to.push(add(corner, scale(onto, byMm)));
}

const straightMm = (contact: Contact): number =>
  contact.kind === 'edge' && contact.edge.kind === 'line' ? distance(contact.edge.a, contact.edge.b) : 0;

/** Unit normal to the right of a contact where it starts; of a bridge, toward the middle of its ball. */
const normalAtStart = (contact: Contact, ballMm: number): Vec =>
  contact.kind === 'edge' ? rightOf(contact.edge, contact.edge.a) : scale(sub(contact.centre, contact.from), 1 / ballMm);

const normalAtEnd = (contact: Contact, ballMm: number): Vec =>
  contact.kind === 'edge' ? rightOf(contact.edge, contact.edge.b) : scale(sub(contact.centre, contact.to), 1 / ballMm);

function rightOf(edge: Edge, at: Vec): Vec {
  if (edge.kind === 'arc') return scale(sub(at, edge.centre), Math.sign(edge.sweepRad) / edge.radius);
  const along = sub(edge.b, edge.a);
  return scale(vec(along.y, -along.x), 1 / Math.hypot(along.x, along.y));
}
