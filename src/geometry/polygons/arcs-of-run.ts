import { type Edge, edgeOfBulge } from '../plane/edge.ts';
import type { Vertex } from '../plane/loop.ts';
import type { Vec } from '../plane/vec.ts';
import { openChannel } from './arc-channel.ts';
import { toldAlong } from './arc-fits.ts';

/** The edges through some points, runs of them told by the lines and arcs they stand for, within `withinMm`. */
export function edgesThrough(points: readonly Vec[], withinMm: number): Edge[] {
  const told = toldAlong(openChannel(points, withinMm), 0, points.length - 1);
  const vertices: readonly Vertex[] = told?.vertices ?? points.map(({ x, y }) => ({ x, y, bulge: 0 }));
  return vertices.slice(1).map((b, i) => {
    const a = vertices[i] as Vertex;
    return edgeOfBulge(a, b, a.bulge);
  });
}
