import type { ArcEdge, Edge } from '../geometry/edge.ts';
import { circleLoop, edgesOf, type Loop, type Vertex } from '../geometry/loop.ts';
import { outlineAreaMm2 } from '../geometry/metal-on-left.ts';
import { distance } from '../geometry/vec.ts';
import { sameEndMm } from './same-end.ts';

/**
 * The loop round closed vertices (mm), always written the same way whatever its first vertex and winding:
 * anticlockwise from its leftmost, then lowest vertex; edges shorter than `sameEndMm` left out; arcs of one whole
 * circle become that circle. Null where it encloses nothing.
 */
export function loopFrom(closed: readonly Vertex[]): Loop | null {
  const vertices = withoutShortEdges(closed);
  const edges = edgesOf({ kind: 'path', vertices });
  const area = edges.length === 0 ? 0 : outlineAreaMm2(edges);
  const around = edges.reduce((sum, edge) => sum + lengthOf(edge), 0);
  if (vertices.length < 2 || Math.abs(area) <= sameEndMm * around) return null;
  return wholeCircle(edges) ?? { kind: 'path', vertices: fromLeftmost(area > 0 ? vertices : reversed(vertices)) };
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

const lengthOf = (edge: Edge): number =>
  edge.kind === 'line' ? distance(edge.a, edge.b) : edge.radius * Math.abs(edge.sweepRad);

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
