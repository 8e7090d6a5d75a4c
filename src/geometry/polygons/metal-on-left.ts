import { type ArcEdge, type Edge, reversedEdge } from '../plane/edge.ts';
import { type Box, boxAroundEdges } from '../plane/edge-box.ts';
import { edgesOf, type Region } from '../plane/loop.ts';
import { cross, length, sub, type Vec } from '../plane/vec.ts';

/** The edges of one closed outline in order, run so that metal lies on the left. */
export type Outline = readonly Edge[];

/**
 * The outlines of a region, solid by even-odd nesting, each run so that metal lies on its left: anticlockwise where an
 * even number of loops lies round it, clockwise where an odd number does.
 */
export function metalOnLeft(region: Region): Outline[] {
  const loops = region.map(edgesOf);
  const boxes = loops.map((edges) => boxAroundEdges(edges));
  return loops.map((edges, i) => {
    const { a } = edges[0] as Edge;
    const around = loops.filter((other, j) => j !== i && inBox(boxes[j] as Box, a) && encloses(other, a));
    const isHole = around.length % 2 === 1;
    return outlineAreaMm2(edges) > 0 === isHole ? reversedOutline(edges) : edges;
  });
}

/** The same outline run the other way round. */
export const reversedOutline = (outline: Outline): Outline => outline.map(reversedEdge).reverse();

const inBox = (box: Box, p: Vec): boolean => p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;

/**
 * The area a closed outline goes round, mm², positive anticlockwise: the shoelace over its chords, and a circular segment
 * ½r²(θ − sin θ) for each arc.
 */
export function outlineAreaMm2(edges: Outline): number {
  const origin = (edges[0] as Edge).a;
  return edges.reduce((sum, edge) => {
    const chord = cross(sub(edge.a, origin), sub(edge.b, origin)) / 2;
    return sum + chord + (edge.kind === 'line' ? 0 : segmentAreaMm2(edge));
  }, 0);
}

const segmentAreaMm2 = ({ radius, sweepRad }: ArcEdge): number =>
  (radius * radius * (sweepRad - Math.sin(sweepRad))) / 2;

/** Whether a closed outline of either sense goes round `p`, by the parity of its crossings with the ray to +x. */
function encloses(edges: Outline, p: Vec): boolean {
  let inside = false;
  for (const edge of edges) if (crossesRay(edge, p)) inside = !inside;
  return inside;
}

/** An arc crosses the ray as often as its chord does, once more or less where `p` lies between the two. */
function crossesRay(edge: Edge, p: Vec): boolean {
  const { a, b } = edge;
  const side = cross(sub(b, a), sub(p, a));
  const chord = a.y > p.y !== b.y > p.y && b.y > a.y === side > 0;
  if (edge.kind === 'line') return chord;
  const wholeCircle = a.x === b.x && a.y === b.y;
  const onArcSide = wholeCircle || (edge.sweepRad > 0 ? side < 0 : side > 0);
  return chord !== (onArcSide && length(sub(p, edge.centre)) < edge.radius);
}
