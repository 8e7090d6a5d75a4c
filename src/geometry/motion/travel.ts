import { type ArcEdge, arcSpans, type Edge, turnFromStart } from '../plane/edge.ts';
import { apply } from '../plane/rigid.ts';
import { add, angleOf, cross, dot, length, lerp, scale, sub, type Vec, vec } from '../plane/vec.ts';
import { type Motion, motionAt } from './motion.ts';

/**
 * A motion as an outline that travels with it sees it. The level of a point is what it keeps: the radius about the pole
 * of a turn, taken negative when the turn runs clockwise, or the height across a slide. Levels grow to the right of
 * the direction of travel. The advance of a point is how far along it lies: an angle, or a length.
 */
export interface Travel {
  /** How far the whole motion advances a point, above 0. */
  readonly reach: number;
  /** How much higher the level of `b` is than that of `a`, mm. */
  readonly rise: (a: Vec, b: Vec) => number;
  /** The edge cut where its level turns over, so that along each piece the level only rises or only falls. */
  readonly monotone: (edge: Edge) => readonly Edge[];
  /** How much farther along `b` lies than `a`; for a turn between half a turn less and half a turn more. */
  readonly advance: (a: Vec, b: Vec) => number;
  /** How far beyond its ends a piece may stray in advance. */
  readonly stray: (piece: Edge) => number;
  /** The edge where the whole motion carries it. */
  readonly carried: (edge: Edge) => Edge;
  /** The track of a point over a given advance. */
  readonly track: (point: Vec, advance: number) => Edge;
}

/** The travel of a turn or slide; it must go somewhere. */
export function travelOf(motion: Motion): Travel {
  const end = motionAt(motion, 1);
  const carry = (p: Vec): Vec => apply(end, p);
  const carried = (edge: Edge): Edge => ({
    ...edge,
    a: carry(edge.a),
    b: carry(edge.b),
    ...(edge.kind === 'arc' && { centre: carry(edge.centre), startRad: edge.startRad + end.turnRad }),
  });
  if (motion.kind === 'turn') return { carried, ...turnTravel(motion.pole, motion.angleRad) };
  return { carried, ...slideTravel(motion.by) };
}

function turnTravel(pole: Vec, angleRad: number): Omit<Travel, 'carried'> {
  const sense = Math.sign(angleRad);
  return {
    reach: Math.abs(angleRad),
    rise: (a, b) => {
      // r_b − r_a, without the difference of two large radii
      const from = sub(a, pole);
      const to = sub(b, pole);
      const sum = length(from) + length(to);
      return sum === 0 ? 0 : (sense * dot(sub(b, a), add(from, to))) / sum;
    },
    monotone: (edge) => {
      if (edge.kind === 'line') return cutAt(edge, [footOf(edge.a, edge.b, pole)]);
      const away = sub(edge.centre, pole);
      return away.x === 0 && away.y === 0 ? [edge] : cutAt(edge, apexes(edge, angleOf(away)));
    },
    advance: (a, b) => {
      const from = sub(a, pole);
      const to = sub(b, pole);
      return sense * Math.atan2(cross(from, to), dot(from, to));
    },
    stray: (piece) => {
      const nearest = Math.min(length(sub(piece.a, pole)), length(sub(piece.b, pole)));
      if (piece.kind === 'line') return nearest > 0 ? 0 : Number.POSITIVE_INFINITY;
      return (Math.abs(piece.sweepRad) * piece.radius) / nearest;
    },
    track: (p, by) => {
      const arm = sub(p, pole);
      const sweepRad = sense * by;
      const b = turned(p, pole, sweepRad);
      return { kind: 'arc', a: p, b, centre: pole, radius: length(arm), startRad: angleOf(arm), sweepRad };
    },
  };
}

function slideTravel(by: Vec): Omit<Travel, 'carried'> {
  const along = scale(by, 1 / length(by));
  const across = vec(along.y, -along.x);
  return {
    reach: length(by),
    rise: (a, b) => dot(sub(b, a), across),
    monotone: (edge) => (edge.kind === 'line' ? [edge] : cutAt(edge, apexes(edge, angleOf(across)))),
    advance: (a, b) => dot(sub(b, a), along),
    stray: (piece) => (piece.kind === 'line' ? 0 : Math.abs(piece.sweepRad) * piece.radius),
    track: (p, advance) => ({ kind: 'line', a: p, b: add(p, scale(along, advance)) }),
  };
}

/** The fraction of the way from `a` to `b` that lies nearest to `p`. */
function footOf(a: Vec, b: Vec, p: Vec): number {
  const along = sub(b, a);
  return dot(sub(p, a), along) / dot(along, along);
}

/** The fractions of an arc's way at which it points along `towardsRad` or straight against it, in order. */
const apexes = (arc: ArcEdge, towardsRad: number): number[] =>
  [towardsRad, towardsRad + Math.PI]
    .filter((angle) => arcSpans(arc, angle))
    .map((angle) => turnFromStart(arc, angle) / Math.abs(arc.sweepRad))
    .sort((s, t) => s - t);

function cutAt(edge: Edge, fractions: readonly number[]): readonly Edge[] {
  const inner = fractions.filter((t) => t > 0 && t < 1);
  if (inner.length === 0) return [edge];
  const stops = [0, ...inner, 1];
  return stops.slice(1).map((to, i) => partOfEdge(edge, stops[i] as number, to));
}

/** The part of an edge between two fractions of its way. */
export function partOfEdge(edge: Edge, from: number, to: number): Edge {
  const ends = { a: pointAlong(edge, from), b: pointAlong(edge, to) };
  if (edge.kind === 'line') return { kind: 'line', ...ends };
  const startRad = edge.startRad + edge.sweepRad * from;
  return { ...edge, ...ends, startRad, sweepRad: edge.sweepRad * (to - from) };
}

/** The point a fraction of the way along an edge, by displacement from its start, so that far centres lose no digits. */
export function pointAlong(edge: Edge, t: number): Vec {
  if (t === 0) return edge.a;
  if (t === 1) return edge.b;
  return edge.kind === 'line' ? lerp(edge.a, edge.b, t) : turned(edge.a, edge.centre, edge.sweepRad * t);
}

/** `p` turned about `centre`, as p + (R − I)·(p − centre) with R − I through 2 sin²(½θ). */
function turned(p: Vec, centre: Vec, angleRad: number): Vec {
  const arm = sub(p, centre);
  const sin = Math.sin(angleRad);
  const fall = 2 * Math.sin(angleRad / 2) ** 2;
  return vec(p.x - fall * arm.x - sin * arm.y, p.y + sin * arm.x - fall * arm.y);
}
