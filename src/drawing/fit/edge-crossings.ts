import { type ArcEdge, type Edge, type LineEdge, turnFromStart } from '../../geometry/plane/edge.ts';
import { add, angleOf, cross, distance, dot, length, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';

/**
 * Where along edge `a` (0–1) it meets edge `b`, good enough to break a line on a drawing: nothing is decided by it.
 * Edges that lie on one another give none.
 */
export function crossingsAlong(a: Edge, b: Edge): number[] {
  return meetings(a, b)
    .filter((p) => isWithin(fractionAt(b, p)))
    .map((p) => fractionAt(a, p))
    .filter(isWithin);
}

const isWithin = (fraction: number): boolean => fraction >= 0 && fraction <= 1;

function meetings(a: Edge, b: Edge): Vec[] {
  if (a.kind === 'line') return b.kind === 'line' ? lineLine(a, b) : lineCircle(a, b);
  return b.kind === 'line' ? lineCircle(b, a) : circleCircle(a, b);
}

function lineLine(a: LineEdge, b: LineEdge): Vec[] {
  const along = sub(a.b, a.a);
  const other = sub(b.b, b.a);
  const turn = cross(along, other);
  return turn === 0 ? [] : [add(a.a, scale(along, cross(sub(b.a, a.a), other) / turn))];
}

function lineCircle(line: LineEdge, { centre, radius }: ArcEdge): Vec[] {
  const chord = sub(line.b, line.a);
  const along = scale(chord, 1 / length(chord));
  const foot = add(line.a, scale(along, dot(sub(centre, line.a), along)));
  return eitherSide(foot, along, radius, distance(foot, centre));
}

function circleCircle(a: ArcEdge, b: ArcEdge): Vec[] {
  const apart = distance(a.centre, b.centre);
  if (apart === 0) return [];
  const towards = scale(sub(b.centre, a.centre), 1 / apart);
  const reach = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  return eitherSide(add(a.centre, scale(towards, reach)), vec(-towards.y, towards.x), a.radius, Math.abs(reach));
}

/** The two points of a circle's chord from its middle, `offCentre` from the centre. */
function eitherSide(middle: Vec, along: Vec, radius: number, offCentre: number): Vec[] {
  if (offCentre > radius) return [];
  const half = Math.sqrt(radius * radius - offCentre * offCentre);
  return [add(middle, scale(along, half)), add(middle, scale(along, -half))];
}

function fractionAt(edge: Edge, p: Vec): number {
  if (edge.kind === 'arc') return turnFromStart(edge, angleOf(sub(p, edge.centre))) / Math.abs(edge.sweepRad);
  const along = sub(edge.b, edge.a);
  return dot(sub(p, edge.a), along) / dot(along, along);
}
