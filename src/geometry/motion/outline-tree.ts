import { type Edge, edgeOfBulge, edgeOfCircle } from '../plane/edge.ts';
import type { Box } from '../plane/edge-box.ts';
import type { Region, Vertex } from '../plane/loop.ts';
import { distance } from '../plane/vec.ts';
import { flatBulge } from './tolerances.ts';

/**
 * The edges of a region in flat arrays under a binary tree of boxes, built once and good at any position.
 *
 * Nodes are numbered as in a heap: root 1, children 2i and 2i + 1, leaves `leafCount` … 2·`leafCount` − 1. A leaf holds
 * one edge; some hold none, and stand for the edge after them only in their boxes. All lengths are in mm, in the region's own frame.
 */
export interface OutlineTree {
  readonly edgeCount: number;
  /** The least power of two that is no less than `edgeCount`. */
  readonly leafCount: number;
  /** ax, ay, bx, by of each edge. */
  readonly ends: Float64Array;
  /** cx, cy, radius, sweepRad of each edge; radius 0 for a line, sweep ±2π for a whole circle. */
  readonly arcs: Float64Array;
  /** The edge that ends where this one starts, and the one that starts where it ends. */
  readonly previous: Int32Array;
  readonly next: Int32Array;
  /** The first edge of each loop. */
  readonly loopStarts: Int32Array;
  /** minX, minY, maxX, maxY of each node. */
  readonly boxes: Float64Array;
  /**
   * ax, ay, bx, by, reach of each node: a chord, and within how many mm of it the node's edges lie. On a smooth
   * outline that is far tighter than a box, whichever way the outline runs.
   */
  readonly chords: Float64Array;
  /** The largest coordinate or radius that enters the arithmetic, mm. */
  readonly reachMm: number;
  /** By how much arcs all but straight were straightened at most, mm. */
  readonly deviationMm: number;
}

/** The length of a node's chord in `chords`. */
export const chordSize = 5;

/** Of nodes: only these know how a tree is numbered. */
export const rootNode = 1;
export const leftOf = (node: number): number => 2 * node;
export const rightOf = (node: number): number => 2 * node + 1;
export const siblingOf = (node: number): number => node ^ 1;
export const isLeaf = ({ leafCount }: OutlineTree, node: number): boolean => node >= leafCount;

/** One more than the last of the nodes, which are numbered on from the root. */
export const nodeCount = ({ leafCount }: OutlineTree): number => 2 * leafCount;

/** The edges of a leaf, one or none, run from `firstEdge` to just before `endEdge`. */
export const firstEdge = (tree: OutlineTree, leaf: number): number => edgeBefore(tree, leaf - tree.leafCount);
export const endEdge = (tree: OutlineTree, leaf: number): number => edgeBefore(tree, leaf + 1 - tree.leafCount);

const edgeBefore = ({ edgeCount, leafCount }: OutlineTree, leaf: number): number =>
  Math.floor((leaf * edgeCount) / leafCount);

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
export const radiusOf = ({ arcs }: OutlineTree, edge: number): number => arcs[4 * edge + 2] as number;
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
  const sizes = region.map((loop) => (loop.kind === 'circle' ? 1 : loop.vertices.length));
  const edgeCount = sizes.reduce((sum, size) => sum + size, 0);
  const ends = new Float64Array(4 * edgeCount);
  const arcs = new Float64Array(4 * edgeCount);
  let edge = 0;
  for (const loop of region) {
    if (loop.kind === 'circle') storeEdge(ends, arcs, edge++, edgeOfCircle(loop.centre, loop.radius));
    else for (let i = 0; i < loop.vertices.length; i++) storePathEdge(ends, arcs, edge++, loop.vertices, i);
  }
  const leafCount = edgeCount === 0 ? 0 : 2 ** Math.ceil(Math.log2(edgeCount));
  const boxes = new Float64Array(8 * leafCount);
  const tree = {
    edgeCount,
    leafCount,
    ends,
    arcs,
    ...linkLoops(sizes),
    boxes,
    chords: new Float64Array(2 * chordSize * leafCount),
    reachMm: reachOf(ends, arcs),
    deviationMm: deviationOf(region),
  };
  fillBoxes(tree);
  fillChords(tree);
  return tree;
}

function reachOf(ends: Float64Array, arcs: Float64Array): number {
  let reachMm = 0;
  for (const x of ends) reachMm = Math.max(reachMm, Math.abs(x));
  for (let i = 0; i < arcs.length; i += 4) {
    const radius = arcs[i + 2] as number;
    if (radius > 0) reachMm = Math.max(reachMm, Math.abs(arcs[i] as number), Math.abs(arcs[i + 1] as number), radius);
  }
  return reachMm;
}

function deviationOf(region: Region): number {
  let deviationMm = 0;
  for (const loop of region) {
    if (loop.kind === 'circle') continue;
    for (const [i, v] of loop.vertices.entries()) {
      if (v.bulge === 0 || Math.abs(v.bulge) > flatBulge) continue;
      const end = loop.vertices[(i + 1) % loop.vertices.length] as Vertex;
      deviationMm = Math.max(deviationMm, (Math.abs(v.bulge) * distance(v, end)) / 2);
    }
  }
  return deviationMm;
}

function storePathEdge(
  ends: Float64Array,
  arcs: Float64Array,
  edge: number,
  vertices: readonly Vertex[],
  i: number,
): void {
  const a = vertices[i] as Vertex;
  const b = vertices[i + 1 === vertices.length ? 0 : i + 1] as Vertex;
  if (Math.abs(a.bulge) > flatBulge) {
    storeEdge(ends, arcs, edge, edgeOfBulge(a, b, a.bulge));
    return;
  }
  ends[4 * edge] = a.x;
  ends[4 * edge + 1] = a.y;
  ends[4 * edge + 2] = b.x;
  ends[4 * edge + 3] = b.y;
}

function storeEdge(ends: Float64Array, arcs: Float64Array, edge: number, { a, b, ...shape }: Edge): void {
  ends.set([a.x, a.y, b.x, b.y], 4 * edge);
  if (shape.kind === 'arc') arcs.set([shape.centre.x, shape.centre.y, shape.radius, shape.sweepRad], 4 * edge);
}

/** A node's chord runs from the start of its first edge to the end of its last. */
function fillChords(tree: OutlineTree): void {
  const { leafCount, chords, ends } = tree;
  for (let leaf = 0; leaf < leafCount; leaf++) {
    const edge = edgeBefore(tree, leaf);
    const at = chordSize * (leafCount + leaf);
    setChord(chords, at, ends, 4 * edge, ends, 4 * edge);
    chords[at + 4] = sagitta(tree, edge);
  }
  for (let node = leafCount - 1; node >= 1; node--) {
    const at = chordSize * node;
    const left = 2 * at;
    const right = left + chordSize;
    setChord(chords, at, chords, left, chords, right);
    for (const child of [left, right]) {
      // distance from a segment is convex, so along the child's chord it is greatest at one of its ends
      const away = Math.max(
        fromChord(chords, at, chords[child] as number, chords[child + 1] as number),
        fromChord(chords, at, chords[child + 2] as number, chords[child + 3] as number),
      );
      chords[at + 4] = Math.max(chords[at + 4] as number, away + (chords[child + 4] as number));
    }
  }
}

function setChord(chords: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, j: number): void {
  chords[at] = a[i] as number;
  chords[at + 1] = a[i + 1] as number;
  chords[at + 2] = b[j + 2] as number;
  chords[at + 3] = b[j + 3] as number;
}

const fromChord = (chords: Float64Array, at: number, x: number, y: number): number =>
  Math.sqrt(
    squaredToSegment(
      x,
      y,
      chords[at] as number,
      chords[at + 1] as number,
      chords[at + 2] as number,
      chords[at + 3] as number,
    ),
  );

/** How far an arc leaves its chord: r(1 − cos ½sweep), beyond a half circle too; 0 for a line. */
const sagitta = (tree: OutlineTree, edge: number): number =>
  radiusOf(tree, edge) * 2 * Math.sin(sweepRadOf(tree, edge) / 4) ** 2;

/** Squared distance (mm²) from a point to the segment a–b. */
export function squaredToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared)) : 0;
  return (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2;
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

function fillBoxes(tree: OutlineTree): void {
  const { boxes, leafCount } = tree;
  for (let leaf = 0; leaf < leafCount; leaf++) {
    const at = 4 * (leafCount + leaf);
    boxes[at] = boxes[at + 1] = Number.POSITIVE_INFINITY;
    boxes[at + 2] = boxes[at + 3] = Number.NEGATIVE_INFINITY;
    growByEdge(tree, at, edgeBefore(tree, leaf));
  }
  for (let node = leafCount - 1; node >= 1; node--) {
    for (let side = 0; side < 4; side++) {
      const a = boxes[8 * node + side] as number;
      const b = boxes[8 * node + 4 + side] as number;
      boxes[4 * node + side] = side < 2 ? Math.min(a, b) : Math.max(a, b);
    }
  }
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
