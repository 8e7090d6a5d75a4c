import type { ArcEdge, Edge } from '../geometry/edge.ts';
import { circleLoop, edgesOf, type Loop, type Vertex } from '../geometry/loop.ts';
import { outlineAreaMm2 } from '../geometry/metal-on-left.ts';
import { cross, distance, length, sub } from '../geometry/vec.ts';
import { sameEndMm } from './same-end.ts';

/**
 * The loop round closed vertices (mm), always written the same way whatever its first vertex and winding:
 * anticlockwise from its leftmost, then lowest vertex; edges shorter than `sameEndMm` left out; arcs of one whole
 * circle become that circle. Null where it only runs there and back on a straight line.
 */
export function loopFrom(closed: readonly Vertex[]): Loop | null {
  const vertices = withoutShortEdges(closed);
  const edges = edgesOf({ kind: 'path', vertices });
  if (isStraight(vertices, edges)) return null;
  const round = outlineAreaMm2(edges) < 0 ? reversed(vertices) : vertices;
  return wholeCircle(edges) ?? { kind: 'path', vertices: fromLeftmost(round) };
}

function isStraight(vertices: readonly Vertex[], edges: readonly Edge[]): boolean {
  const [first] = vertices;
  if (first === undefined) return true;
  const outs = vertices.map((vertex) => sub(vertex, first));
  const farthest = outs.reduce((best, out) => (length(out) > length(best) ? out : best));
  const within = sameEndMm * length(farthest);
  return outs.every((out) => Math.abs(cross(farthest, out)) <= within) && edges.every(({ kind }) => kind === 'line');
}

/** The same closed outline the other way round. */
function reversed(vertices: readonly Vertex[]): Vertex[] {
  const last = vertices.length - 1;
  return vertices.map((_, i) => {
    const at = vertices[last - i] as Vertex;
    const before = vertices[(2 * last - i) % (last + 1)] as Vertex;
    return { x: at.x, y: at.y, bulge: 0 - before.bulge };
  });
}

function withoutShortEdges(vertices: readonly Vertex[]): Vertex[] {
  const kept: Vertex[] = [];
  for (const vertex of vertices) {
    const before = kept.at(-1);
    if (before === undefined || distance(before, vertex) > sameEndMm) kept.push(vertex);
    else kept[kept.length - 1] = { ...before, bulge: vertex.bulge };
  }
  while (kept.length > 1 && distance(kept.at(-1) as Vertex, kept[0] as Vertex) <= sameEndMm) kept.pop();
  return kept;
}

function wholeCircle(edges: readonly Edge[]): Loop | null {
  const [first] = edges;
  if (first?.kind !== 'arc') return null;
  const onFirst = (edge: Edge): edge is ArcEdge =>
    edge.kind === 'arc' &&
    distance(edge.centre, first.centre) <= sameEndMm &&
    Math.abs(edge.radius - first.radius) <= sameEndMm;
  if (!edges.every(onFirst)) return null;
  const turnRad = edges.reduce((sum, edge) => sum + (edge.kind === 'arc' ? edge.sweepRad : 0), 0);
  return Math.abs(Math.abs(turnRad) - 2 * Math.PI) < 1e-3 ? circleLoop(first.centre, first.radius) : null;
}

function fromLeftmost(vertices: readonly Vertex[]): Vertex[] {
  let best = 0;
  vertices.forEach((v, i) => {
    const than = vertices[best] as Vertex;
    const aside = v.x - than.x;
    if (aside < -sameEndMm || (aside <= sameEndMm && v.y < than.y)) best = i;
  });
  return [...vertices.slice(best), ...vertices.slice(0, best)];
}
