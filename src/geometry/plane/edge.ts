import { add, angleOf, distance, lerp, polar, scale, sub, type Vec, vec } from './vec.ts';

/** A straight edge from `a` to `b`. */
export interface LineEdge {
  readonly kind: 'line';
  readonly a: Vec;
  readonly b: Vec;
}

/** A circular arc from `a` to `b`: `sweepRad` is positive anticlockwise; ±2π is a whole circle with a = b. */
export interface ArcEdge {
  readonly kind: 'arc';
  readonly a: Vec;
  readonly b: Vec;
  readonly centre: Vec;
  readonly radius: number;
  readonly startRad: number;
  readonly sweepRad: number;
}

export type Edge = LineEdge | ArcEdge;

/**
 * The edge from `a` to `b` with a bulge (tan of a quarter of the arc's angle, positive anticlockwise).
 * Centre c = m + ((1/b − b)/4)·J(b − a) with m the chord's middle and J a quarter turn anticlockwise;
 * radius = chord·(1 + b²)/(4|b|).
 */
export function edgeOfBulge(a: Vec, b: Vec, bulge: number): Edge {
  if (bulge === 0) return { kind: 'line', a, b };
  const chord = sub(b, a);
  const centre = add(lerp(a, b, 0.5), scale(vec(-chord.y, chord.x), (1 / bulge - bulge) / 4));
  const radius = (distance(a, b) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { kind: 'arc', a, b, centre, radius, startRad: angleOf(sub(a, centre)), sweepRad: 4 * Math.atan(bulge) };
}

/** The bulge of an edge: the tangent of a quarter of its arc's angle, 0 for a line. */
export const bulgeOf = (edge: Edge): number => (edge.kind === 'line' ? 0 : Math.tan(edge.sweepRad / 4));

/** A whole circle as one anticlockwise arc that starts at 3 o'clock. */
export function edgeOfCircle(centre: Vec, radius: number): ArcEdge {
  const a = vec(centre.x + radius, centre.y);
  return { kind: 'arc', a, b: a, centre, radius, startRad: 0, sweepRad: 2 * Math.PI };
}

/** The point a fraction `t` along an edge. */
export const pointOnEdge = (edge: Edge, t: number): Vec =>
  edge.kind === 'line' ? lerp(edge.a, edge.b, t) : polar(edge.centre, edge.radius, edge.startRad + edge.sweepRad * t);

/** How far (0 ≤ turn < 2π) one turns from the arc's start, in the arc's own sense, to reach `angleRad`. */
export function turnFromStart(arc: ArcEdge, angleRad: number): number {
  const turn = (arc.sweepRad > 0 ? angleRad - arc.startRad : arc.startRad - angleRad) % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

export const arcSpans = (arc: ArcEdge, angleRad: number): boolean =>
  turnFromStart(arc, angleRad) <= Math.abs(arc.sweepRad);

/** The same edge run from its end to its start. */
export const reversedEdge = (edge: Edge): Edge =>
  edge.kind === 'line'
    ? { kind: 'line', a: edge.b, b: edge.a }
    : { ...edge, a: edge.b, b: edge.a, startRad: edge.startRad + edge.sweepRad, sweepRad: -edge.sweepRad };
