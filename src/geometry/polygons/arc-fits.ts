import type { Vertex } from '../plane/loop.ts';
import { distance, type Vec } from '../plane/vec.ts';
import { type Channel, edgeOver, type Fit, jointAt } from './arc-channel.ts';

/** Fewer edges in a row are left as they are: three lie on one arc by chance. */
export const leastEdges = 4;

/** A line with its runs of edges told by arcs, and how far from the line they come at most. */
interface ToldLine {
  readonly vertices: readonly Vertex[];
  readonly offMm: number;
}

/** So many edges of a line from a point on, both ends among its vertices; null where none of it is told by an arc. */
export function toldAlong(channel: Channel, start: number, count: number): ToldLine | null {
  const pointOf = (index: number): number => index % channel.points.length;
  const fits = new Map<number, Fit>();
  const joints = new Map<number, Vec>();
  for (const { from, fit } of fitsFrom(channel, start, start + count)) {
    fits.set(from, fit);
    for (const joint of [from, from + fit.count]) joints.set(pointOf(joint), jointAt(channel, joint));
  }
  if (fits.size === 0) return null;
  const vertices: Vertex[] = [];
  for (let i = start; i <= start + count; ) {
    const fit = fits.get(i);
    const { x, y } = joints.get(pointOf(i)) ?? (channel.points[pointOf(i)] as Vec);
    vertices.push({ x, y, bulge: fit?.bulge ?? 0 });
    i += fit?.count ?? 1;
  }
  const shifts = [...joints].map(([i, joint]) => distance(joint, channel.points[i] as Vec));
  return { vertices, offMm: Math.max(...shifts, ...[...fits.values()].map(({ offMm }) => offMm)) };
}

/** The runs that arcs tell between two points, each as long as it can be. */
export function* fitsFrom(channel: Channel, start: number, end: number): Generator<{ from: number; fit: Fit }, void> {
  for (let from = start; from < end; ) {
    const fit = longestFrom(channel, from, Math.min(end - from, channel.points.length - 1));
    if (fit !== null) yield { from, fit };
    from += fit?.count ?? 1;
  }
}

/** The longest run from a point on that one arc tells: twice as far while it does, then by halves. */
function longestFrom(channel: Channel, from: number, most: number): Fit | null {
  if (most < leastEdges) return null;
  let best = edgeOver(channel, from, leastEdges);
  let tooMany = Number.POSITIVE_INFINITY;
  while (best !== null && best.count < most && tooMany - best.count > 1) {
    const count = tooMany > most ? Math.min(2 * best.count, most) : Math.floor((best.count + tooMany) / 2);
    const fit = edgeOver(channel, from, count);
    if (fit === null) tooMany = count;
    else best = fit;
  }
  return best;
}
