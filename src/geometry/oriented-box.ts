import type { ArcEdge, Edge } from './edge.ts';
import { distance, dot, lerp, scale, sub, type Vec, vec } from './vec.ts';

/**
 * A rectangle that lies any way round: half its length `along` a unit direction, half its width `across` it, mm.
 * It fits long slender things that lie askew, where a box along the axes is mostly empty.
 */
export interface OrientedBox {
  readonly centre: Vec;
  readonly direction: Vec;
  readonly along: number;
  readonly across: number;
}

/** A rectangle round an edge: round its chord and how far an arc bows from it, or round the circle beyond a half. */
export function orientedBoxOfEdge(edge: Edge): OrientedBox {
  const chord = distance(edge.a, edge.b);
  if (edge.kind === 'arc' && Math.abs(edge.sweepRad) > Math.PI) return boxOfCircle(edge);
  const direction = scale(sub(edge.b, edge.a), 1 / chord);
  const middle = lerp(edge.a, edge.b, 0.5);
  if (edge.kind === 'line') return { centre: middle, direction, along: chord / 2, across: 0 };
  // the arc bows by ½·chord·tan(¼ sweep), to the right where it runs anticlockwise
  const bow = (chord / 2) * Math.tan(edge.sweepRad / 4);
  const centre = vec(middle.x + (direction.y * bow) / 2, middle.y - (direction.x * bow) / 2);
  return { centre, direction, along: chord / 2, across: Math.abs(bow) / 2 };
}

const boxOfCircle = ({ centre, radius }: ArcEdge): OrientedBox => ({
  centre,
  direction: vec(1, 0),
  along: radius,
  across: radius,
});

/** A rectangle round two, lying as the longer of them. */
export function orientedBoxAround(a: OrientedBox, b: OrientedBox): OrientedBox {
  const [longer, other] = a.along >= b.along ? [a, b] : [b, a];
  const { direction } = longer;
  const square = vec(-direction.y, direction.x);
  const apart = sub(other.centre, longer.centre);
  const [alongFrom, alongTo] = span(longer.along, dot(apart, direction), reachAlong(other, direction));
  const [acrossFrom, acrossTo] = span(longer.across, dot(apart, square), reachAlong(other, square));
  const [u, v] = [(alongFrom + alongTo) / 2, (acrossFrom + acrossTo) / 2];
  return {
    centre: vec(longer.centre.x + direction.x * u + square.x * v, longer.centre.y + direction.y * u + square.y * v),
    direction,
    along: (alongTo - alongFrom) / 2,
    across: (acrossTo - acrossFrom) / 2,
  };
}

/** Whether two rectangles come within a distance of one another: no side of either parts them by more. */
export const orientedBoxesMeet = (a: OrientedBox, b: OrientedBox, withinMm: number): boolean =>
  !isPartedBySidesOf(a, b, withinMm) && !isPartedBySidesOf(b, a, withinMm);

/** In plain numbers, for it is asked some twenty times for every edge of an outline. */
function isPartedBySidesOf(a: OrientedBox, b: OrientedBox, withinMm: number): boolean {
  const { x, y } = a.direction;
  const [dx, dy] = [b.centre.x - a.centre.x, b.centre.y - a.centre.y];
  const cosine = Math.abs(b.direction.x * x + b.direction.y * y);
  const sine = Math.abs(b.direction.x * y - b.direction.y * x);
  return (
    Math.abs(dx * x + dy * y) > a.along + (b.along * cosine + b.across * sine) + withinMm ||
    Math.abs(dy * x - dx * y) > a.across + (b.along * sine + b.across * cosine) + withinMm
  );
}

/** How far a rectangle reaches from its centre in a direction, either way. */
const reachAlong = ({ direction, along, across }: OrientedBox, to: Vec): number =>
  along * Math.abs(direction.x * to.x + direction.y * to.y) +
  across * Math.abs(direction.x * to.y - direction.y * to.x);

const span = (half: number, middle: number, otherHalf: number): [number, number] => [
  Math.min(-half, middle - otherHalf),
  Math.max(half, middle + otherHalf),
];
