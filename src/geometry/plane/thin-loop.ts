import type { Loop, Vertex } from './loop.ts';
import { squaredToSegment } from './segment.ts';

/**
 * The loop with as few of its vertices as Douglas and Peucker's way leaves, each loop no further than `withinMm` from the
 * other: for drawing, never for measuring. Arcs are kept as they are. (Cartographica 10, 1973, from memory.)
 */
export function thinLoop(loop: Loop, withinMm: number): Loop {
  if (loop.kind === 'circle' || loop.vertices.length < 4) return loop;
  const { vertices } = loop;
  const stays = endsOfRuns(vertices);
  for (let [at, from] = [1, 0]; at < stays.length; at++) {
    if (stays[at] === 0) continue;
    keepFar(vertices, from, at, withinMm, stays);
    from = at;
  }
  const left = vertices.filter((_, i) => stays[i] === 1);
  // two would enclose nothing
  return left.length < 3 ? loop : { kind: 'path', vertices: left };
}

/** Marks both ends of every arc, the first vertex, again at the end, and the one furthest from it. */
function endsOfRuns(vertices: readonly Vertex[]): Uint8Array {
  const stays = new Uint8Array(vertices.length + 1);
  const first = vertices[0] as Vertex;
  let [furthest, awayMm] = [0, 0];
  vertices.forEach((v, i) => {
    if (v.bulge !== 0) stays.fill(1, i, i + 2);
    const mm = Math.hypot(v.x - first.x, v.y - first.y);
    if (mm > awayMm) [furthest, awayMm] = [i, mm];
  });
  for (const i of [0, furthest, vertices.length]) stays[i] = 1;
  return stays;
}

/** Marks what lies too far from the straight edge between two vertices that stay, and so on between those. */
function keepFar(vertices: readonly Vertex[], from: number, to: number, withinMm: number, stays: Uint8Array): void {
  const pending = [from, to];
  for (let b = pending.pop(); b !== undefined; b = pending.pop()) {
    const a = pending.pop() as number;
    const start = vertices[a] as Vertex;
    const end = vertices[b % vertices.length] as Vertex;
    let furthest = 0;
    let awayMm2 = withinMm * withinMm;
    for (let i = a + 1; i < b; i++) {
      const { x, y } = vertices[i] as Vertex;
      // to the stretch between them, not to the line beyond it: only then is neither loop far from the other
      const mm2 = squaredToSegment(x, y, start.x, start.y, end.x, end.y);
      if (mm2 > awayMm2) {
        furthest = i;
        awayMm2 = mm2;
      }
    }
    if (furthest === 0) continue;
    stays[furthest] = 1;
    pending.push(a, furthest, furthest, b);
  }
}
