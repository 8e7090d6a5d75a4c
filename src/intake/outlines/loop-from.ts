import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { boxAroundEdges } from '../../geometry/plane/edge-box.ts';
import { circleLoop, edgesOf, type Loop, type Vertex } from '../../geometry/plane/loop.ts';
import { cross, distance, length, sub } from '../../geometry/plane/vec.ts';
import { outlineAreaMm2 } from '../../geometry/polygons/metal-on-left.ts';
import { curveToleranceMm, sameEndMm } from './tolerances.ts';

/** How far arcs may stray from the circle they are taken for. */
interface Slack {
  readonly mm: number;
  readonly ofRadius: number;
}

/** Arcs drawn as arcs are those of one circle but for rounding. */
export const drawnAsArcs: Slack = { mm: sameEndMm, ofRadius: 0 };

/**
 * Programs that know no arcs write a circle as four cubic curves, which stray from it by 2.73e-4 of its radius
 * (computed: the usual handles of 0.5523 r); the arcs that follow them add their own tolerance.
 */
export const drawnAsCurves: Slack = { mm: curveToleranceMm, ofRadius: 3e-4 };

/** Turns of a closed chain of arcs differ by whole turns, so anything between would do. */
const fullTurnRad = 0.5;

/**
 * The loop round closed vertices (mm), always written the same way whatever its first vertex and winding:
 * anticlockwise from its leftmost, then lowest vertex; edges shorter than `sameEndMm` left out; arcs of one whole
 * circle become that circle. Null where it only runs there and back on a straight line.
 */
export function loopFrom(closed: readonly Vertex[], slack: Slack = drawnAsArcs): Loop | null {
  const vertices = withoutShortEdges(closed);
  const edges = edgesOf({ kind: 'path', vertices });
  if (isStraight(vertices, edges)) return null;
  const round = outlineAreaMm2(edges) < 0 ? reversed(vertices) : vertices;
  return wholeCircle(edges, slack) ?? { kind: 'path', vertices: fromLeftmost(round) };
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

/** The circle that arcs make, all the way round: about the middle of their box, each end and middle on it. */
function wholeCircle(edges: readonly Edge[], slack: Slack): Loop | null {
  const turnRad = edges.reduce((sum, edge) => sum + (edge.kind === 'arc' ? edge.sweepRad : Number.NaN), 0);
  if (!(Math.abs(Math.abs(turnRad) - 2 * Math.PI) < fullTurnRad)) return null;
  const { minX, minY, maxX, maxY } = boxAroundEdges(edges);
  const centre = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const radius = (maxX - minX + maxY - minY) / 4;
  const within = slack.mm + slack.ofRadius * radius;
  const isOn = (edge: Edge): boolean =>
    [edge.a, pointOnEdge(edge, 0.5)].every((p) => Math.abs(distance(p, centre) - radius) <= within);
  return edges.every(isOn) ? circleLoop(centre, radius) : null;
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
