import { type ArcEdge, arcSpans, type Edge, type LineEdge } from '../../../src/geometry/plane/edge.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  length,
  lerp,
  polar,
  scale,
  sub,
  type Vec,
} from '../../../src/geometry/plane/vec.ts';

/** Two points, one on each of two edges, and how far they are apart in mm. */
export interface Gap {
  readonly mm: number;
  readonly p: Vec;
  readonly q: Vec;
}

/**
 * The least distance between two edges, by writing down every pair of points at which it can be: an end and the
 * nearest point of the other edge, the ends of a common normal, a crossing. Plain and slow; spans of arcs are told by
 * angle.
 */
export function edgeGap(e: Edge, f: Edge): Gap {
  let best: Gap = gapOf(e.a, nearestOnEdge(f, e.a));
  const consider = (p: Vec, q: Vec): void => {
    const mm = distance(p, q);
    if (mm < best.mm) best = { mm, p, q };
  };
  consider(e.b, nearestOnEdge(f, e.b));
  consider(nearestOnEdge(e, f.a), f.a);
  consider(nearestOnEdge(e, f.b), f.b);
  for (const [p, q] of commonNormals(e, f)) consider(p, q);
  for (const p of crossings(e, f)) consider(p, p);
  return best;
}

/** A bound from below on the gap of two edges, from discs that hold them: quickly had, to pass over far pairs. */
export function roughGap(e: Edge, f: Edge): number {
  const [eMiddle, eReach] = discOf(e);
  const [fMiddle, fReach] = discOf(f);
  return distance(eMiddle, fMiddle) - eReach - fReach;
}

function discOf(edge: Edge): readonly [Vec, number] {
  if (edge.kind === 'arc' && Math.abs(edge.sweepRad) > Math.PI) return [edge.centre, edge.radius];
  return [lerp(edge.a, edge.b, 0.5), distance(edge.a, edge.b) / 2];
}

const gapOf = (p: Vec, q: Vec): Gap => ({ mm: distance(p, q), p, q });

export function nearestOnEdge(edge: Edge, p: Vec): Vec {
  if (edge.kind === 'line') return lerpExactly(edge, Math.min(1, Math.max(0, alongLine(edge, p))));
  const out = sub(p, edge.centre);
  if (length(out) > 0 && arcSpans(edge, angleOf(out))) return onCircle(edge, out);
  return distance(p, edge.a) <= distance(p, edge.b) ? edge.a : edge.b;
}

const alongLine = ({ a, b }: LineEdge, p: Vec): number => dot(sub(p, a), sub(b, a)) / dot(sub(b, a), sub(b, a));

const lerpExactly = ({ a, b }: LineEdge, t: number): Vec => (t === 0 ? a : t === 1 ? b : lerp(a, b, t));

const onCircle = (arc: ArcEdge, direction: Vec): Vec =>
  add(arc.centre, scale(direction, arc.radius / length(direction)));

/** Points of two edges that face one another along a line square to both; two lines have none that matters. */
export function commonNormals(e: Edge, f: Edge): [Vec, Vec][] {
  if (e.kind === 'line') {
    if (f.kind === 'line') return [];
    return commonNormals(f, e).map(([p, q]) => [q, p]);
  }
  const others = f.kind === 'line' ? [lineFoot(f, e.centre)] : circlePoints(f, sub(f.centre, e.centre));
  return others
    .flatMap((q) => {
      const toward = f.kind === 'line' ? sub(q, e.centre) : sub(f.centre, e.centre);
      return circlePoints(e, toward).map((p): [Vec, Vec] => [p, q]);
    })
    .filter(([p, q]) => spans(e, p) && spans(f, q));
}

const lineFoot = (line: LineEdge, p: Vec): Vec => lerp(line.a, line.b, alongLine(line, p));

/** The two points of the arc's circle along ± a direction. */
function circlePoints(arc: ArcEdge, direction: Vec): Vec[] {
  if (length(direction) === 0) return [];
  return [onCircle(arc, direction), onCircle(arc, scale(direction, -1))];
}

function spans(edge: Edge, p: Vec): boolean {
  if (edge.kind === 'arc') return arcSpans(edge, angleOf(sub(p, edge.centre)));
  const t = alongLine(edge, p);
  return t >= 0 && t <= 1;
}

/** Where two edges cross. */
export function crossings(e: Edge, f: Edge): Vec[] {
  const found =
    e.kind === 'line'
      ? f.kind === 'line'
        ? linesCross(e, f)
        : lineMeetsCircle(e, f)
      : f.kind === 'line'
        ? lineMeetsCircle(f, e)
        : circlesMeet(e, f);
  return found.filter((p) => spans(e, p) && spans(f, p));
}

function linesCross(e: LineEdge, f: LineEdge): Vec[] {
  const d = sub(e.b, e.a);
  const g = sub(f.b, f.a);
  const turn = cross(d, g);
  return turn === 0 ? [] : [lerp(e.a, e.b, cross(sub(f.a, e.a), g) / turn)];
}

function lineMeetsCircle(line: LineEdge, arc: ArcEdge): Vec[] {
  const foot = lineFoot(line, arc.centre);
  const height = distance(foot, arc.centre);
  if (height > arc.radius) return [];
  const way = sub(line.b, line.a);
  const half = scale(way, Math.sqrt((arc.radius - height) * (arc.radius + height)) / length(way));
  return [add(foot, half), sub(foot, half)];
}

function circlesMeet(e: ArcEdge, f: ArcEdge): Vec[] {
  const apart = distance(e.centre, f.centre);
  if (apart === 0 || apart > e.radius + f.radius || apart < Math.abs(e.radius - f.radius)) return [];
  const cos = (apart * apart + e.radius ** 2 - f.radius ** 2) / (2 * apart * e.radius);
  const half = Math.acos(Math.min(1, Math.max(-1, cos)));
  const toward = angleOf(sub(f.centre, e.centre));
  return [polar(e.centre, e.radius, toward + half), polar(e.centre, e.radius, toward - half)];
}

/** An edge carried by a rigid motion: where it takes points, and how far it turns. */
export function placeEdge(edge: Edge, place: (p: Vec) => Vec, turnRad: number): Edge {
  const ends = { a: place(edge.a), b: place(edge.b) };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  return { ...edge, ...ends, centre: place(edge.centre), startRad: edge.startRad + turnRad };
}
