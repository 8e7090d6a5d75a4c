import { orient2d } from 'robust-predicates';
import { type ArcEdge, arcSpans, type Edge, type LineEdge } from './edge.ts';
import { add, angleOf, cross, distance, dot, lerp, scale, sub, type Vec, vec } from './vec.ts';

/** A place (mm) where two edges meet, and how. */
export interface Meeting {
  readonly kind: 'crosses' | 'touches' | 'overlaps';
  readonly at: Vec;
}

/**
 * Where two edges meet that are no neighbours on an outline, or null. Two lines are told apart exactly, by the sign
 * of orient2d; where an arc takes part, what comes within `toleranceMm` counts as touching.
 */
export function meetingOf(e: Edge, f: Edge, toleranceMm: number): Meeting | null {
  if (e.kind === 'line' && f.kind === 'line') return lineMeetsLine(e, f);
  const end = [e.a, e.b].find((p) => isOn(f, p, toleranceMm)) ?? [f.a, f.b].find((p) => isOn(e, p, toleranceMm));
  if (end !== undefined) return { kind: areOneCircle(e, f, toleranceMm) ? 'overlaps' : 'touches', at: end };
  const points = pointsInCommon(e, f);
  const at = points.find((p) => isOn(e, p, toleranceMm) && isOn(f, p, toleranceMm));
  return at === undefined ? null : { kind: points.length === 1 ? 'touches' : 'crosses', at };
}

/**
 * Where two edges meet besides the vertex they share as neighbours on an outline (`e` ends where `f` starts), or null.
 * Two that share both their ends are the whole of a two-vertex loop.
 */
export function meetingOfNeighbours(e: Edge, f: Edge, toleranceMm: number): Meeting | null {
  const shared = f.a;
  if (runsBackAlong(e, f, toleranceMm)) return { kind: 'overlaps', at: shared };
  if (e.kind === 'line' && f.kind === 'line') return null;
  if (e.a.x === f.b.x && e.a.y === f.b.y) return null;
  const at = secondPoint(e, f);
  if (at === null || distance(at, shared) <= toleranceMm) return null;
  return isOn(e, at, toleranceMm) && isOn(f, at, toleranceMm) ? { kind: 'touches', at } : null;
}

function lineMeetsLine(e: LineEdge, f: LineEdge): Meeting | null {
  const fa = side(e, f.a);
  const fb = side(e, f.b);
  if (fa * fb > 0) return null;
  const ea = side(f, e.a);
  const eb = side(f, e.b);
  if (fa * fb < 0 && ea * eb < 0) return { kind: 'crosses', at: crossingOf(e, f) };
  const shared = [
    ...(ea === 0 && isBetween(f, e.a) ? [e.a] : []),
    ...(eb === 0 && isBetween(f, e.b) ? [e.b] : []),
    ...(fa === 0 && isBetween(e, f.a) ? [f.a] : []),
    ...(fb === 0 && isBetween(e, f.b) ? [f.b] : []),
  ];
  const [at] = shared;
  if (at === undefined) return null;
  return { kind: shared.every((p) => p.x === at.x && p.y === at.y) ? 'touches' : 'overlaps', at };
}

const side = ({ a, b }: LineEdge, p: Vec): number => Math.sign(orient2d(a.x, a.y, b.x, b.y, p.x, p.y));

/** Whether a point of the line through an edge is a point of the edge. */
const isBetween = ({ a, b }: LineEdge, p: Vec): boolean => isWithin(a.x, p.x, b.x) && isWithin(a.y, p.y, b.y);

const isWithin = (from: number, x: number, to: number): boolean => (from <= x && x <= to) || (to <= x && x <= from);

/** For showing only: that the lines cross has been decided before. */
function crossingOf(e: LineEdge, f: LineEdge): Vec {
  const other = sub(f.b, f.a);
  return lerp(e.a, e.b, cross(sub(f.a, e.a), other) / cross(sub(e.b, e.a), other));
}

/** The points where the line or circle of one edge meets that of the other; where they miss, the one nearest to it. */
function pointsInCommon(e: Edge, f: Edge): Vec[] {
  if (e.kind === 'line') return f.kind === 'line' ? [] : pointsOnLine(e, f);
  return f.kind === 'line' ? pointsOnLine(f, e) : pointsOnCircle(e, f);
}

function pointsOnLine({ a, b }: LineEdge, { centre, radius }: ArcEdge): Vec[] {
  const along = scale(sub(b, a), 1 / distance(a, b));
  const foot = add(a, scale(along, dot(sub(centre, a), along)));
  const height = cross(along, sub(centre, a));
  const halfSquared = (radius - height) * (radius + height);
  return halfSquared <= 0 ? [foot] : eitherSide(foot, scale(along, Math.sqrt(halfSquared)));
}

function pointsOnCircle(e: ArcEdge, f: ArcEdge): Vec[] {
  const apart = distance(e.centre, f.centre);
  if (apart === 0) return [];
  const along = scale(sub(f.centre, e.centre), 1 / apart);
  const reach = (apart + ((e.radius - f.radius) * (e.radius + f.radius)) / apart) / 2;
  const halfSquared = (e.radius - reach) * (e.radius + reach);
  if (halfSquared <= 0) return [add(e.centre, scale(along, Math.sign(reach) * e.radius))];
  return eitherSide(add(e.centre, scale(along, reach)), scale(vec(-along.y, along.x), Math.sqrt(halfSquared)));
}

const eitherSide = (foot: Vec, half: Vec): Vec[] => [add(foot, half), sub(foot, half)];

/** Whether a point lies on an edge, to within the tolerance and what a flat arc's far centre leaves of precision. */
function isOn(edge: Edge, p: Vec, toleranceMm: number): boolean {
  if (edge.kind === 'line') return isOnLine(edge, p, toleranceMm);
  const off = Math.abs(distance(p, edge.centre) - edge.radius);
  if (off > toleranceMm + edge.radius * 4 * Number.EPSILON) return false;
  return arcSpans(edge, angleOf(sub(p, edge.centre))) || isNearEnd(edge, p, toleranceMm);
}

function isOnLine(edge: LineEdge, p: Vec, toleranceMm: number): boolean {
  const along = sub(edge.b, edge.a);
  const from = sub(p, edge.a);
  if (Math.abs(cross(along, from)) > toleranceMm * Math.hypot(along.x, along.y)) return false;
  const reach = dot(from, along);
  return (reach >= 0 && reach <= dot(along, along)) || isNearEnd(edge, p, toleranceMm);
}

const isNearEnd = ({ a, b }: Edge, p: Vec, toleranceMm: number): boolean =>
  distance(p, a) <= toleranceMm || distance(p, b) <= toleranceMm;

const areOneCircle = (e: Edge, f: Edge, toleranceMm: number): boolean =>
  e.kind === 'arc' &&
  f.kind === 'arc' &&
  distance(e.centre, f.centre) <= toleranceMm &&
  Math.abs(e.radius - f.radius) <= toleranceMm;

function runsBackAlong(e: Edge, f: Edge, toleranceMm: number): boolean {
  if (e.kind === 'line' && f.kind === 'line') return dot(sub(e.a, f.a), sub(f.b, f.a)) > 0 && side(e, f.b) === 0;
  return e.kind === 'arc' && f.kind === 'arc' && e.sweepRad * f.sweepRad < 0 && areOneCircle(e, f, toleranceMm);
}

/**
 * The other point where the lines or circles of two neighbours meet: the vertex they share mirrored in the line
 * through both centres, or in the line through the centre square to the straight one. Free of cancellation where
 * they meet smoothly.
 */
function secondPoint(e: Edge, f: Edge): Vec | null {
  const shared = f.a;
  if (e.kind === 'line') return f.kind === 'line' ? null : chordEnd(shared, sub(e.a, e.b), f);
  if (f.kind === 'line') return chordEnd(shared, sub(f.b, f.a), e);
  const axis = sub(f.centre, e.centre);
  const square = vec(-axis.y, axis.x);
  return axis.x === 0 && axis.y === 0 ? null : chordEnd(shared, square, e);
}

/** The far end of a circle's chord that starts at one of its points and runs along a direction. */
function chordEnd(start: Vec, along: Vec, { centre }: ArcEdge): Vec {
  return add(start, scale(along, (2 * dot(sub(centre, start), along)) / dot(along, along)));
}
