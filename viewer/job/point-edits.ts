import { alongEdge, bulgeThrough, nearestAlong, type Points, type VertexFile, vertexAt, type XY, xyOf } from './arc.ts';

/** Points of an outline, or of a run that is not closed yet. */
export type PointList = readonly VertexFile[];

export const at = (points: PointList, i: number): VertexFile =>
  points[((i % points.length) + points.length) % points.length] as VertexFile;

const bulgeAt = (points: PointList, i: number): number => at(points, i)[2] ?? 0;

const replaced = (points: PointList, i: number, vertex: VertexFile): Points =>
  points.map((old, k) => (k === i ? vertex : old));

/** The edges at the vertex keep their bulges. */
export const withVertexAt = (points: PointList, i: number, to: XY): Points =>
  replaced(points, i, vertexAt(to, bulgeAt(points, i)));

export const withBulge = (points: PointList, i: number, bulge: number): Points =>
  replaced(points, i, vertexAt(xyOf(at(points, i)), bulge));

/** Parts edge `i` at the place of it nearest to `near`; an arc stays the same arc in two. */
export function withVertexOn(points: PointList, i: number, near: XY): Points {
  const [a, b, bulge] = [xyOf(at(points, i)), xyOf(at(points, i + 1)), bulgeAt(points, i)];
  const t = nearestAlong(a, b, bulge, near);
  const quarter = Math.atan(bulge);
  const parts = [vertexAt(a, Math.tan(quarter * t)), vertexAt(alongEdge(a, b, bulge, t), Math.tan(quarter * (1 - t)))];
  return points.flatMap((old, k) => (k === i ? parts : [old]));
}

/**
 * Without vertex `i`: its two edges become the arc through it where both were arcs, else a straight one. Null where what
 * is left goes round nothing.
 */
export function withoutVertex(points: PointList, i: number): Points | null {
  const rest = points.filter((_, k) => k !== i);
  if (rest.length < 2) return null;
  const before = (i + points.length - 1) % points.length;
  const bothArcs = bulgeAt(points, before) !== 0 && bulgeAt(points, i) !== 0;
  const [a, p, b] = [at(points, before), at(points, i), at(points, i + 1)].map(xyOf) as [XY, XY, XY];
  const bulge = bothArcs ? (bulgeThrough(a, p, b) ?? 0) : 0;
  const joined = withBulge(rest, before < i ? before : before - 1, bulge);
  return enclosesNothing(joined) ? null : joined;
}

/** Two points make an outline only with an arc between them. */
export const enclosesNothing = (points: PointList): boolean =>
  points.length < 2 || (points.length === 2 && points.every(([, , bulge = 0]) => bulge === 0));

/** Edge `i` as the arc over `through`; as it was where no arc goes there. */
export function withEdgeOver(points: PointList, i: number, through: XY): Points {
  const bulge = bulgeThrough(xyOf(at(points, i)), through, xyOf(at(points, i + 1)));
  return bulge === null ? [...points] : withBulge(points, i, bulge);
}

export const withStraightEdge = (points: PointList, i: number): Points => withBulge(points, i, 0);
