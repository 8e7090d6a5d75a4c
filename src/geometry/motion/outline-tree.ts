import { type Edge, edgeOfBulge, edgeOfCircle } from '../plane/edge.ts';
import type { Box } from '../plane/edge-box.ts';
import { edgeCountOfLoop, type Loop, type Region, type Vertex } from '../plane/loop.ts';
import { squaredToSegment } from '../plane/segment.ts';
import { distance } from '../plane/vec.ts';
import { allButStraightMm, flatBulge } from './tolerances.ts';

/**
 * The edges of a region in flat arrays under a binary tree of boxes, built once and good at any position.
 *
 * Nodes are numbered as in a heap: root 1, children 2i and 2i + 1, leaves `leafCount` … 2·`leafCount` − 1. A leaf holds
 * one edge, or two that follow one another all but straight, as a scan's do: half the nodes, and no slower. All lengths are in mm, in
 * the region's own frame.
 */
export interface OutlineTree {
  readonly edgeCount: number;
  readonly leafCount: number;
  /** ax, ay, bx, by of each edge. */
  readonly ends: Float64Array;
  /** cx, cy, radius, sweepRad of each edge; radius 0 for a line, sweep ±2π for a whole circle. Empty where all are lines. */
  readonly arcs: Float64Array;
  /** The edge that ends where this one starts, and the one that starts where it ends. */
  readonly previous: Int32Array;
  readonly next: Int32Array;
  /** The first edge of each loop. */
  readonly loopStarts: Int32Array;
  /** minX, minY, maxX, maxY of each node. */
  readonly boxes: Float64Array;
  /** The first and the last edge of each node: its chord runs from the start of the one to the end of the other. */
  readonly spans: Int32Array;
  /**
   * Within how many mm of its chord each node's edges lie. On a smooth outline that is far tighter than a box, whichever
   * way the outline runs.
   */
  readonly reaches: Float64Array;
  /** The largest coordinate or radius that enters the arithmetic, mm. */
  readonly reachMm: number;
  /** By how much arcs all but straight were straightened at most, mm. */
  readonly deviationMm: number;
}

/** Of nodes: only these know how a tree is numbered. */
export const rootNode = 1;
export const leftOf = (node: number): number => 2 * node;
export const rightOf = (node: number): number => 2 * node + 1;
export const siblingOf = (node: number): number => node ^ 1;
export const isLeaf = ({ leafCount }: OutlineTree, node: number): boolean => node >= leafCount;

/** One more than the last of the nodes, which are numbered on from the root. */
export const nodeCount = ({ leafCount }: OutlineTree): number => 2 * leafCount;

/** The edges of a node run from `firstEdge` to just before `endEdge`. */
export const firstEdge = ({ spans }: OutlineTree, node: number): number => spans[2 * node] as number;
export const lastEdge = ({ spans }: OutlineTree, node: number): number => spans[2 * node + 1] as number;
export const endEdge = ({ spans }: OutlineTree, node: number): number => (spans[2 * node + 1] as number) + 1;

/** The sides of a node's box. */
export const minX = ({ boxes }: OutlineTree, node: number): number => boxes[4 * node] as number;
export const minY = ({ boxes }: OutlineTree, node: number): number => boxes[4 * node + 1] as number;
export const maxX = ({ boxes }: OutlineTree, node: number): number => boxes[4 * node + 2] as number;
export const maxY = ({ boxes }: OutlineTree, node: number): number => boxes[4 * node + 3] as number;

/** Where an edge starts and ends. */
export const startX = ({ ends }: OutlineTree, edge: number): number => ends[4 * edge] as number;
export const startY = ({ ends }: OutlineTree, edge: number): number => ends[4 * edge + 1] as number;
export const endX = ({ ends }: OutlineTree, edge: number): number => ends[4 * edge + 2] as number;
export const endY = ({ ends }: OutlineTree, edge: number): number => ends[4 * edge + 3] as number;

/** The shape of an edge that is an arc; its radius tells whether it is. */
export const centreX = ({ arcs }: OutlineTree, edge: number): number => arcs[4 * edge] as number;
export const centreY = ({ arcs }: OutlineTree, edge: number): number => arcs[4 * edge + 1] as number;
export const radiusOf = ({ arcs }: OutlineTree, edge: number): number =>
  arcs.length === 0 ? 0 : (arcs[4 * edge + 2] as number);
export const sweepRadOf = ({ arcs }: OutlineTree, edge: number): number => arcs[4 * edge + 3] as number;

/** The box round a whole outline; all 0 where it has no edges. */
export const boxOfOutline = (tree: OutlineTree): Box =>
  tree.edgeCount === 0
    ? { minX: 0, minY: 0, maxX: 0, maxY: 0 }
    : {
        minX: minX(tree, rootNode),
        minY: minY(tree, rootNode),
        maxX: maxX(tree, rootNode),
        maxY: maxY(tree, rootNode),
      };

export function buildOutlineTree(region: Region): OutlineTree {
  const sizes = region.map(edgeCountOfLoop);
  const edgeCount = sizes.reduce((sum, size) => sum + size, 0);
  const ends = new Float64Array(4 * edgeCount);
  const arcs = new Float64Array(region.some(hasArc) ? 4 * edgeCount : 0);
  const { reachMm, deviationMm } = storeEdges(ends, arcs, region);
  const { previous, next, loopStarts } = linkLoops(sizes);
  const starts = leafStarts(ends, arcs, loopStarts);
  const leafCount = starts.length;
  // written out, and whole from the start: trees of one shape are what keeps the hot loops compiled
  const tree: OutlineTree = {
    edgeCount,
    leafCount,
    ends,
    arcs,
    previous,
    next,
    loopStarts,
    boxes: new Float64Array(8 * leafCount),
    spans: new Int32Array(4 * leafCount),
    reaches: new Float64Array(2 * leafCount),
    reachMm,
    deviationMm,
  };
  fillLeaves(tree, starts);
  for (let node = leafCount - 1; node >= rootNode; node--) fillFromChildren(tree, node);
  return tree;
}

const hasArc = (loop: Loop): boolean =>
  loop.kind === 'circle' || loop.vertices.some(({ bulge }) => Math.abs(bulge) > flatBulge);

function storeEdges(
  ends: Float64Array,
  arcs: Float64Array,
  region: Region,
): Pick<OutlineTree, 'reachMm' | 'deviationMm'> {
  let [edge, reachMm, deviationMm] = [0, 0, 0];
  for (const loop of region) {
    if (loop.kind === 'circle') {
      reachMm = Math.max(reachMm, storeEdge(ends, arcs, edge++, edgeOfCircle(loop.centre, loop.radius)));
      continue;
    }
    const { vertices } = loop;
    for (let i = 0; i < vertices.length; i++) {
      const a = vertices[i] as Vertex;
      const b = vertices[i + 1 === vertices.length ? 0 : i + 1] as Vertex;
      if (Math.abs(a.bulge) > flatBulge) {
        reachMm = Math.max(reachMm, storeEdge(ends, arcs, edge++, edgeOfBulge(a, b, a.bulge)));
        continue;
      }
      if (a.bulge !== 0) deviationMm = Math.max(deviationMm, (Math.abs(a.bulge) * distance(a, b)) / 2);
      const at = 4 * edge++;
      ends[at] = a.x;
      ends[at + 1] = a.y;
      ends[at + 2] = b.x;
      ends[at + 3] = b.y;
      reachMm = Math.max(reachMm, Math.abs(a.x), Math.abs(a.y));
    }
  }
  return { reachMm, deviationMm };
}

/** Stores an arc, or a circle; the largest of its figures that enters the arithmetic. */
function storeEdge(ends: Float64Array, arcs: Float64Array, edge: number, { a, b, ...shape }: Edge): number {
  const at = 4 * edge;
  ends.set([a.x, a.y, b.x, b.y], at);
  if (shape.kind === 'line') return Math.max(Math.abs(a.x), Math.abs(a.y));
  const { centre, radius, sweepRad } = shape;
  arcs.set([centre.x, centre.y, radius, sweepRad], at);
  return Math.max(Math.abs(a.x), Math.abs(a.y), Math.abs(centre.x), Math.abs(centre.y), radius);
}

/** The first edge of every leaf. */
function leafStarts(ends: Float64Array, arcs: Float64Array, loopStarts: Int32Array): Int32Array {
  const edgeCount = ends.length / 4;
  const starts = new Int32Array(edgeCount);
  let count = 0;
  for (let loop = 0; loop < loopStarts.length; loop++) {
    const end = loop + 1 < loopStarts.length ? (loopStarts[loop + 1] as number) : edgeCount;
    for (let edge = loopStarts[loop] as number; edge < end; edge++) {
      starts[count++] = edge;
      if (edge + 1 < end && areAllButStraight(ends, arcs, edge)) edge++;
    }
  }
  return starts.slice(0, count);
}

/** Whether an edge and the one after it leave their common chord by less than what clearances are asked for. */
function areAllButStraight(ends: Float64Array, arcs: Float64Array, edge: number): boolean {
  const at = 4 * edge;
  const offMm2 = squaredToSegment(
    ends[at + 2] as number,
    ends[at + 3] as number,
    ends[at] as number,
    ends[at + 1] as number,
    ends[at + 6] as number,
    ends[at + 7] as number,
  );
  return Math.sqrt(offMm2) + Math.max(sagitta(arcs, edge), sagitta(arcs, edge + 1)) < allButStraightMm;
}

/**
 * Gives every leaf its edges, from left to right: where leaves stand on two levels, those of the deeper one come first,
 * and they are numbered last.
 */
function fillLeaves(tree: OutlineTree, starts: Int32Array): void {
  const { edgeCount, leafCount } = tree;
  const deepest = 2 ** Math.ceil(Math.log2(leafCount));
  const deep = 2 * leafCount - deepest;
  for (let i = 0; i < leafCount; i++) {
    const leaf = i < deep ? deepest + i : leafCount + i - deep;
    const end = i + 1 < leafCount ? (starts[i + 1] as number) : edgeCount;
    fillLeaf(tree, leaf, starts[i] as number, end - 1);
  }
}

function fillLeaf(tree: OutlineTree, leaf: number, first: number, last: number): void {
  const { boxes, spans, reaches } = tree;
  spans[2 * leaf] = first;
  spans[2 * leaf + 1] = last;
  const at = 4 * leaf;
  boxes[at] = boxes[at + 1] = Number.POSITIVE_INFINITY;
  boxes[at + 2] = boxes[at + 3] = Number.NEGATIVE_INFINITY;
  for (let edge = first; edge <= last; edge++) {
    growByEdge(tree, at, edge);
    // alone, an edge is its own chord
    const away = first === last ? 0 : awayFromChord(tree, leaf, edge, edge);
    reaches[leaf] = Math.max(reaches[leaf] as number, away + sagitta(tree.arcs, edge));
  }
}

function fillFromChildren(tree: OutlineTree, node: number): void {
  const { boxes, spans, reaches } = tree;
  const left = leftOf(node);
  const right = rightOf(node);
  spans[2 * node] = spans[2 * left] as number;
  spans[2 * node + 1] = spans[2 * right + 1] as number;
  for (let side = 0; side < 4; side++) {
    const a = boxes[4 * left + side] as number;
    const b = boxes[4 * right + side] as number;
    boxes[4 * node + side] = side < 2 ? Math.min(a, b) : Math.max(a, b);
  }
  reaches[node] = Math.max(reachFromChordOf(tree, node, left), reachFromChordOf(tree, node, right));
}

/** Within how many mm of a node's chord the edges of its child lie. */
const reachFromChordOf = (tree: OutlineTree, node: number, child: number): number =>
  awayFromChord(tree, node, tree.spans[2 * child] as number, tree.spans[2 * child + 1] as number) +
  (tree.reaches[child] as number);

/**
 * How far the chord from the start of one edge to the end of another leaves a node's chord. Distance from a segment is
 * convex, so along it that is greatest at one of its ends.
 */
function awayFromChord({ ends, spans }: OutlineTree, node: number, first: number, last: number): number {
  const a = 4 * (spans[2 * node] as number);
  const b = 4 * (spans[2 * node + 1] as number) + 2;
  const ax = ends[a] as number;
  const ay = ends[a + 1] as number;
  const bx = ends[b] as number;
  const by = ends[b + 1] as number;
  const start = squaredToSegment(ends[4 * first] as number, ends[4 * first + 1] as number, ax, ay, bx, by);
  const end = squaredToSegment(ends[4 * last + 2] as number, ends[4 * last + 3] as number, ax, ay, bx, by);
  return Math.sqrt(Math.max(start, end));
}

/** How far an arc leaves its chord: r(1 − cos ½sweep), beyond a half circle too; 0 for a line. */
function sagitta(arcs: Float64Array, edge: number): number {
  const radius = arcs.length === 0 ? 0 : (arcs[4 * edge + 2] as number);
  return radius === 0 ? 0 : radius * 2 * Math.sin((arcs[4 * edge + 3] as number) / 4) ** 2;
}

function linkLoops(sizes: readonly number[]): Pick<OutlineTree, 'previous' | 'next' | 'loopStarts'> {
  const edgeCount = sizes.reduce((sum, size) => sum + size, 0);
  const previous = new Int32Array(edgeCount);
  const next = new Int32Array(edgeCount);
  const loopStarts = new Int32Array(sizes.length);
  let start = 0;
  for (const [loop, size] of sizes.entries()) {
    loopStarts[loop] = start;
    for (let i = 0; i < size; i++) {
      previous[start + i] = start + ((i + size - 1) % size);
      next[start + i] = start + ((i + 1) % size);
    }
    start += size;
  }
  return { previous, next, loopStarts };
}

function growByEdge(tree: OutlineTree, at: number, edge: number): void {
  const { boxes } = tree;
  const ax = startX(tree, edge);
  const ay = startY(tree, edge);
  const bx = endX(tree, edge);
  const by = endY(tree, edge);
  grow(boxes, at, ax, ay);
  grow(boxes, at, bx, by);
  const radius = radiusOf(tree, edge);
  if (radius === 0) return;
  const way = Math.sign(sweepRadOf(tree, edge));
  for (let quarter = 0; quarter < 4; quarter++) {
    const x = centreX(tree, edge) + radius * (quarter === 0 ? 1 : quarter === 2 ? -1 : 0);
    const y = centreY(tree, edge) + radius * (quarter === 1 ? 1 : quarter === 3 ? -1 : 0);
    // an arc lies wholly on one side of its chord
    if (way * ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) <= 0) grow(boxes, at, x, y);
  }
}

function grow(boxes: Float64Array, at: number, x: number, y: number): void {
  if (x < (boxes[at] as number)) boxes[at] = x;
  if (y < (boxes[at + 1] as number)) boxes[at + 1] = y;
  if (x > (boxes[at + 2] as number)) boxes[at + 2] = x;
  if (y > (boxes[at + 3] as number)) boxes[at + 3] = y;
}
