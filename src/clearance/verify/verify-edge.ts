import { type ArcEdge, arcSpans, type Edge, type LineEdge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { cross, distance, sub, type Vec } from '../../geometry/plane/vec.ts';

/** Distance (mm) from a point to an edge. */
export const distanceToEdge = (edge: Edge, p: Vec): number =>
  edge.kind === 'line' ? distanceToLine(edge, p) : distanceToArc(edge, p);

// run more often than anything else here, so without vectors made on the way
function distanceToLine({ a, b }: LineEdge, p: Vec): number {
  const [alongX, alongY, fromAX, fromAY] = [b.x - a.x, b.y - a.y, p.x - a.x, p.y - a.y];
  const part = (fromAX * alongX + fromAY * alongY) / (alongX * alongX + alongY * alongY) || 0;
  const t = Math.max(0, Math.min(1, part));
  return norm(fromAX - t * alongX, fromAY - t * alongY);
}

function distanceToArc(arc: ArcEdge, p: Vec): number {
  const { a, b, centre, radius } = arc;
  const [fromCX, fromCY, fromAX, fromAY] = [p.x - centre.x, p.y - centre.y, p.x - a.x, p.y - a.y];
  if (!arcSpans(arc, Math.atan2(fromCY, fromCX))) return Math.min(norm(fromAX, fromAY), norm(p.x - b.x, p.y - b.y));
  // |p − c| − |a − c| as (p − a)·(p + a − 2c) over their sum: a nearly straight arc has its centre very far off
  const along = fromAX * (fromCX + a.x - centre.x) + fromAY * (fromCY + a.y - centre.y);
  return Math.abs(along) / (norm(fromCX, fromCY) + radius);
}

const norm = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** How often a ray from `p` toward +x crosses an edge; ends count by the half-open rule, so that loops add up. */
export function crossingsRight(edge: Edge, p: Vec): number {
  if (edge.kind === 'line') return isBetween(p.y, edge.a.y, edge.b.y) && lineIsRight(edge.a, edge.b, p) ? 1 : 0;
  let count = 0;
  for (const half of halvesOf(edge)) {
    if (isBetween(p.y, half.fromY, half.toY) && halfIsRight(edge, half.isRight, p)) count++;
  }
  return count;
}

const isBetween = (y: number, a: number, b: number): boolean => a > y !== b > y;

const lineIsRight = (a: Vec, b: Vec, p: Vec): boolean => cross(sub(b, a), sub(p, a)) > 0 === b.y > a.y;

const halfIsRight = ({ centre, radius }: ArcEdge, isRight: boolean, p: Vec): boolean => {
  const halfWidth = Math.sqrt(Math.max(0, radius ** 2 - (p.y - centre.y) ** 2));
  return centre.x + (isRight ? halfWidth : -halfWidth) > p.x;
};

/** Part of an arc that rises or falls throughout, on one side of its centre. */
interface Half {
  readonly fromY: number;
  readonly toY: number;
  readonly isRight: boolean;
}

const halves = new WeakMap<ArcEdge, readonly Half[]>();

function halvesOf(arc: ArcEdge): readonly Half[] {
  const known = halves.get(arc) ?? splitAtTopAndBottom(arc);
  halves.set(arc, known);
  return known;
}

function splitAtTopAndBottom(arc: ArcEdge): Half[] {
  const { centre, radius, startRad, sweepRad } = arc;
  const [low, high] = [startRad, startRad + sweepRad].sort((a, b) => a - b) as [number, number];
  const turns: number[] = [];
  for (let k = Math.ceil(low / Math.PI - 0.5); (k + 0.5) * Math.PI < high; k++) {
    if ((k + 0.5) * Math.PI > low) turns.push((k + 0.5) * Math.PI);
  }
  const angles = [low, ...turns, high];
  const [lowEnd, highEnd] = sweepRad > 0 ? [arc.a, arc.b] : [arc.b, arc.a];
  const heightOf = (i: number): number => {
    if (i === 0) return lowEnd.y;
    if (i === angles.length - 1) return highEnd.y;
    return centre.y + (Math.sin(angles[i] as number) > 0 ? radius : -radius);
  };
  return angles.slice(1).map((angle, i) => ({
    fromY: heightOf(i),
    toY: heightOf(i + 1),
    isRight: Math.cos((angle + (angles[i] as number)) / 2) > 0,
  }));
}

/** A short piece of an edge; all of it lies within `bulgeMm` of the box of its ends. */
export interface EdgePiece {
  readonly a: Vec;
  readonly b: Vec;
  readonly bulgeMm: number;
}

export const lengthOf = (edge: Edge): number =>
  edge.kind === 'line' ? distance(edge.a, edge.b) : edge.radius * Math.abs(edge.sweepRad);

/** An edge cut into pieces no longer than `mostMm`, arcs also into turns of half a radian. */
export function piecesOf(edge: Edge, mostMm: number): EdgePiece[] {
  const turn = edge.kind === 'arc' ? Math.abs(edge.sweepRad) : 0;
  const count = Math.max(1, Math.ceil(lengthOf(edge) / mostMm), Math.ceil(2 * turn));
  const bulgeMm = edge.kind === 'arc' ? 2 * edge.radius * Math.sin(turn / count / 4) ** 2 : 0;
  return Array.from({ length: count }, (_, i) => ({
    a: pointOnEdge(edge, i / count),
    b: pointOnEdge(edge, (i + 1) / count),
    bulgeMm,
  }));
}
