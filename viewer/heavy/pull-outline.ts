import { Matrix, solve } from 'ml-matrix';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { type GreyWindow, pullToEdge, usualPull } from '../../src/intake/photo/pull-to-edge.ts';
import { alongEdge, apart, type CircleFile, type Points, vertexAt, type XY, xyOf } from '../job/arc.ts';
import { at, type PointList } from '../job/point-edits.ts';

/** A piece of a picture in grey, and where the drawing is in it. */
export interface Sight {
  readonly grey: GreyWindow;
  /** The window's top left corner in the picture. */
  readonly corner: Vec;
  /** A place of the drawing in the picture; null where the camera does not see it. */
  readonly toPx: (place: XY) => Vec | null;
}

/** An outline pulled onto the picture's contrast. */
export interface PulledOutline<T> {
  readonly outline: T;
  /** How many of its edges were found there; the others stay. */
  readonly found: number;
  readonly of: number;
  /** The furthest that a vertex, or a circle's rim, moved; in the drawing's units. */
  readonly moved: number;
}

/** How far from the edge a hand may have traced, on the casting, and how few or many pixels that may come to. */
const [reachMm, leastReachPx, mostReachPx] = [1.5, usualPull.reachPx, 24];

/** Along an edge, a sample for every so many pixels. */
const [pixelsApart, leastSamples, mostSamples] = [6, 5, 41];

/** The offsets of places of one edge along its own normal, each at its place from −½ to ½. */
interface Offsets {
  readonly found: readonly (readonly [along: number, offset: number])[];
  readonly asked: number;
}

/** How far the picture's edge is from a place along a normal, in the drawing's units; null where there is none. */
function offsetAt({ grey, corner, toPx }: Sight, [x, y]: XY, normal: XY, mm: number): number | null {
  const step = 0.1 / mm;
  const [px, ahead] = [toPx([x, y]), toPx([x + normal[0] * step, y + normal[1] * step])];
  if (px === null || ahead === null) return null;
  const along = vec(ahead.x - px.x, ahead.y - px.y);
  const pxPerUnit = Math.hypot(along.x, along.y) / step;
  const reachPx = Math.min(mostReachPx, Math.max(leastReachPx, (reachMm / mm) * pxPerUnit));
  const from = vec(px.x - corner.x, px.y - corner.y);
  const pulled = pullToEdge(grey, from, along, { ...usualPull, reachPx });
  return pulled.ok ? pulled.movedPx / pxPerUnit : null;
}

/** Left of the way along an edge. */
function normalAt(a: XY, b: XY, bulge: number, t: number): XY {
  const [p, q] = [alongEdge(a, b, bulge, t - 1e-4), alongEdge(a, b, bulge, t + 1e-4)];
  const long = apart(p, q) || 1;
  return [(p[1] - q[1]) / long, (q[0] - p[0]) / long];
}

/** An edge's offset at its start and its end; null where too little of it was found. */
interface EdgeMove {
  readonly start: number;
  readonly end: number;
}

/**
 * The straight line through an edge's offsets by least squares, after those far from their median are left out: a scratch
 * or a shadow that crosses the edge. Half of what was looked for has to be there.
 */
function edgeMove({ found, asked }: Offsets, unitsPerPx: number): EdgeMove | null {
  const kept = withoutStrays(found, 2 * unitsPerPx);
  if (kept.length < Math.max(3, asked / 2)) return null;
  const [a = 0, b = 0] = leastSquares(
    kept.map(([along]) => [1, along]),
    kept.map(([, offset]) => offset),
  );
  return { start: a - b / 2, end: a + b / 2 };
}

function withoutStrays(found: Offsets['found'], atLeast: number): Offsets['found'] {
  const middle = medianOf(found.map(([, offset]) => offset));
  const spread = medianOf(found.map(([, offset]) => Math.abs(offset - middle)));
  return found.filter(([, offset]) => Math.abs(offset - middle) <= Math.max(atLeast, 3 * spread));
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

const leastSquares = (rows: number[][], values: number[]): number[] =>
  solve(new Matrix(rows), Matrix.columnVector(values), true).to1DArray();

function moveOf(sight: Sight, points: PointList, edge: number, mm: number): EdgeMove | null {
  const [a, b, bulge] = [xyOf(at(points, edge)), xyOf(at(points, edge + 1)), at(points, edge)[2] ?? 0];
  const [from, to] = [sight.toPx(a), sight.toPx(b)];
  if (from === null || to === null || apart(a, b) === 0) return null;
  const px = Math.hypot(to.x - from.x, to.y - from.y);
  const asked = Math.min(mostSamples, Math.max(leastSamples, Math.round(px / pixelsApart)));
  // not into the corners, where another edge is near
  const places = Array.from({ length: asked }, (_, k) => 0.1 + (0.8 * (k + 0.5)) / asked);
  const found = places.flatMap((t): [number, number][] => {
    const offset = offsetAt(sight, alongEdge(a, b, bulge, t), normalAt(a, b, bulge, t), mm);
    return offset === null ? [] : [[t - 0.5, offset]];
  });
  return edgeMove({ found, asked }, apart(a, b) / Math.max(1, px));
}

/** Flatter than this by the sine between its edges, a vertex is taken to lie on a smooth line. */
const smoothSine = 0.26;

/** The move of a vertex that takes both its edges along their normals by their own offsets. */
function vertexMove(before: Side | null, after: Side | null): XY {
  const [one, other] = [before ?? after, after ?? before];
  if (one === null || other === null) return [0, 0];
  const [[a, b], [c, d]] = [one.normal, other.normal];
  const sine = a * d - b * c;
  if (Math.abs(sine) < smoothSine) {
    const known = [one, other].filter(({ found }) => found);
    const mean = known.reduce((sum, { offset }) => sum + offset, 0) / Math.max(1, known.length);
    const long = Math.hypot(a + c, b + d) || 1;
    return [(mean * (a + c)) / long, (mean * (b + d)) / long];
  }
  return [(one.offset * d - other.offset * b) / sine, (a * other.offset - c * one.offset) / sine];
}

interface Side {
  readonly normal: XY;
  readonly offset: number;
  readonly found: boolean;
}

/** Moves the vertices so that every edge found in the picture comes to lie on it; edges that are not found stay. */
export function pulledPoints(sight: Sight, points: PointList, closed: boolean, mm: number): PulledOutline<Points> {
  let now: Points = [...points];
  let found = 0;
  const of = closed ? points.length : points.length - 1;
  // a second time from where the first has brought it: corners come from offsets to first order
  for (let round = 0; round < 2; round += 1) {
    const moves = Array.from({ length: of }, (_, edge) => moveOf(sight, now, edge, mm));
    found = moves.filter((move) => move !== null).length;
    now = now.map(([x, y, bulge], i) => {
      const [dx, dy] = vertexMove(sideOf(now, moves, closed ? (i + of - 1) % of : i - 1, 1), sideOf(now, moves, i, 0));
      return vertexAt([x + dx, y + dy], bulge);
    });
  }
  const moved = Math.max(0, ...now.map((vertex, i) => apart(xyOf(vertex), xyOf(at(points, i)))));
  return { outline: now, found, of, moved };
}

function sideOf(points: PointList, moves: readonly (EdgeMove | null)[], edge: number, t: 0 | 1): Side | null {
  const move = moves[edge];
  if (move === undefined) return null;
  const [a, b, bulge] = [xyOf(at(points, edge)), xyOf(at(points, edge + 1)), at(points, edge)[2] ?? 0];
  const offset = move === null ? 0 : t === 0 ? move.start : move.end;
  return { normal: normalAt(a, b, bulge, t), offset, found: move !== null };
}

const rimSamples = 48;

/** The circle through the contrast found about a circle's rim, by least squares of the distances to first order. */
export function pulledCircle(sight: Sight, circle: CircleFile, mm: number): PulledOutline<CircleFile> {
  let now = circle;
  let found = 0;
  for (let round = 0; round < 2; round += 1) {
    const rim = Array.from({ length: rimSamples }, (_, k) => (2 * Math.PI * k) / rimSamples).flatMap(
      (angle): [number, number][] => {
        const out: XY = [Math.cos(angle), Math.sin(angle)];
        const place: XY = [now.circle[0] + out[0] * now.radius, now.circle[1] + out[1] * now.radius];
        const offset = offsetAt(sight, place, out, mm);
        return offset === null ? [] : [[angle, offset]];
      },
    );
    const kept = rim.length < 6 ? [] : withoutStrays(rim, 0.3 / mm);
    found = kept.length;
    if (found < rimSamples / 2) break;
    const [dx = 0, dy = 0, dr = 0] = leastSquares(
      kept.map(([angle]) => [Math.cos(angle), Math.sin(angle), 1]),
      kept.map(([, offset]) => offset),
    );
    now = { circle: [now.circle[0] + dx, now.circle[1] + dy], radius: now.radius + dr };
  }
  const isFound = found >= rimSamples / 2 && now.radius > 0;
  const outline = isFound ? now : circle;
  const moved = apart(outline.circle, circle.circle) + Math.abs(outline.radius - circle.radius);
  return { outline, found: isFound ? 1 : 0, of: 1, moved };
}
