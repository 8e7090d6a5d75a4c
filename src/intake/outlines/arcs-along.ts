import { type Edge, edgeOfBulge } from '../../geometry/plane/edge.ts';
import type { Vertex } from '../../geometry/plane/loop.ts';
import { cross, distance, dot, length, lerp, sub, type Vec } from '../../geometry/plane/vec.ts';
import { inReach } from './reach.ts';

/** A smooth curve, t from 0 to 1. */
export type Curve = (t: number) => Vec;

/** Halvings after which a piece is taken as straight: only a cusp or a curve of no length comes so far. */
const mostHalvings = 24;
/** An arc of up to a right angle stands in for a piece of curve. */
const largestBulge = Math.tan(Math.PI / 8);
/** A bulge that stands out less than this from its chord is drawn straight. */
const straightMm = 1e-6;
const nearEnd = 1 / 1024;
const samplesAt = [0.0625, 0.1875, 0.3125, 0.4375, 0.5625, 0.6875, 0.8125, 0.9375];

/**
 * The bulge of the arc from `a` to `b` through `through`: the chords turn by half the arc's angle there
 * (inscribed-angle theorem), and the bulge is the tangent of half that turn. Points in line give 0.
 */
export function bulgeThrough(a: Vec, through: Vec, b: Vec): number {
  const [into, out] = [sub(through, a), sub(b, through)];
  return Math.tan(Math.atan2(cross(into, out), dot(into, out)) / 2);
}

/**
 * Arcs and lines that follow a curve within `withinMm`: halved until the arc through start, middle and end passes
 * that near to eight points of the curve between. The last vertex is the curve's end.
 */
export function arcsAlong(curve: Curve, withinMm: number): Vertex[] {
  const vertices: Vertex[] = [];
  follow(curve, withinMm, { from: 0, to: 1, a: curve(0), b: curve(1) }, 0, vertices);
  vertices.push({ ...curve(1), bulge: 0 });
  return vertices;
}

interface CurvePiece {
  readonly from: number;
  readonly to: number;
  readonly a: Vec;
  readonly b: Vec;
}

function follow(curve: Curve, withinMm: number, piece: CurvePiece, halvings: number, vertices: Vertex[]): void {
  const half = (piece.from + piece.to) / 2;
  const middle = curve(half);
  const bulge = bulgeOf(piece, middle);
  if (halvings >= mostHalvings || !inReach(middle) || follows(curve, piece, bulge, withinMm)) {
    vertices.push({ ...piece.a, bulge });
    return;
  }
  follow(curve, withinMm, { ...piece, to: half, b: middle }, halvings + 1, vertices);
  follow(curve, withinMm, { ...piece, from: half, a: middle }, halvings + 1, vertices);
}

/** The bulge of a piece, 0 where it is straight within `straightMm` or turns more than an arc may. */
function bulgeOf({ a, b }: CurvePiece, middle: Vec): number {
  const bulge = bulgeThrough(a, middle, b);
  const sagitta = (Math.abs(bulge) * distance(a, b)) / 2;
  return sagitta > straightMm && Math.abs(bulge) <= largestBulge ? bulge : 0;
}

function follows(curve: Curve, piece: CurvePiece, bulge: number, withinMm: number): boolean {
  const edge = edgeOfBulge(piece.a, piece.b, bulge);
  const at = (share: number): Vec => curve(piece.from + (piece.to - piece.from) * share);
  return [...samplesAt, 0.5].every((share) => nearEdge(edge, at(share), withinMm)) && staysBetween(piece, at, withinMm);
}

/** Whether the curve sets out from each end towards the other: a tip beyond an end would fall between the samples. */
function staysBetween({ a, b }: CurvePiece, at: (share: number) => Vec, withinMm: number): boolean {
  const chord = sub(b, a);
  if (length(chord) <= withinMm) return true;
  return dot(sub(at(nearEnd), a), chord) >= 0 && dot(sub(b, at(1 - nearEnd)), chord) >= 0;
}

function nearEdge(edge: Edge, p: Vec, withinMm: number): boolean {
  if (edge.kind === 'arc') return Math.abs(distance(p, edge.centre) - edge.radius) <= withinMm;
  const [chord, out] = [sub(edge.b, edge.a), sub(p, edge.a)];
  const along = dot(out, chord) / dot(chord, chord);
  // a chord of no length has no direction: the start is then the nearest there is
  const nearest = along > 0 ? lerp(edge.a, edge.b, Math.min(along, 1)) : edge.a;
  return distance(p, nearest) <= withinMm;
}
