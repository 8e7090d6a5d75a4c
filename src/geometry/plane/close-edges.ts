import type { Edge } from './edge.ts';
import { boxAroundEdges } from './edge-box.ts';
import {
  alongOf,
  boxesComeWithin,
  type OrientedBoxes,
  orientedBoxes,
  storeBoxAround,
  storeBoxOfEdge,
} from './oriented-box.ts';

/**
 * Calls `visit` for every two edges of some outlines whose boxes come within `withinMm` of one another, each pair once,
 * until it returns false or `mostTests` boxes have been compared; says whether it came to the end. Edges are counted
 * through all outlines. They lie in a binary tree of oriented boxes (Gottschalk, Lin, Manocha 1996) as they follow one
 * another, outlines packed sort-tile-recursive (Leutenegger, Lopez, Edgington 1997), and the tree is joined with itself:
 * n log n for edges that mostly lie apart, however they lie.
 */
export function forEachClosePair(
  outlines: readonly (readonly Edge[])[],
  withinMm: number,
  mostTests: number,
  visit: (i: number, j: number) => boolean,
): boolean {
  const order = packed(outlines);
  const count = order.length;
  const boxes = boxesOver(order, outlines.flat());
  let tests = 0;
  // a node is told by the place of its box and by which of the edges in order it holds
  const inside = (at: number, first: number, n: number): boolean => {
    if (n === 1) return true;
    const half = n >> 1;
    const [left, right] = [at + 1, at + 2 * half];
    return (
      inside(left, first, half) &&
      inside(right, first + half, n - half) &&
      between(left, first, half, right, first + half, n - half)
    );
  };
  const between = (a: number, firstA: number, nA: number, b: number, firstB: number, nB: number): boolean => {
    if (++tests > mostTests) return false;
    if (!boxesComeWithin(boxes, a, b, withinMm)) return true;
    if (nA === 1 && nB === 1) return visit(order[firstA] as number, order[firstB] as number);
    if (nB > 1 && (nA === 1 || alongOf(boxes, a) <= alongOf(boxes, b))) {
      const half = nB >> 1;
      return (
        between(a, firstA, nA, b + 1, firstB, half) && between(a, firstA, nA, b + 2 * half, firstB + half, nB - half)
      );
    }
    const half = nA >> 1;
    return (
      between(a + 1, firstA, half, b, firstB, nB) && between(a + 2 * half, firstA + half, nA - half, b, firstB, nB)
    );
  };
  return count === 0 || inside(0, 0, count);
}

/** The edges as they follow one another, outline by outline: outlines in slabs from left to right, in each bottom to top. */
function packed(outlines: readonly (readonly Edge[])[]): Int32Array {
  let count = 0;
  const placed = outlines.map((edges) => {
    const { minX, minY, maxX, maxY } = boxAroundEdges(edges);
    const start = count;
    count += edges.length;
    return { start, length: edges.length, x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  });
  placed.sort((a, b) => a.x - b.x);
  const perSlab = Math.ceil(Math.sqrt(placed.length));
  const order = new Int32Array(count);
  let at = 0;
  for (let slab = 0; slab < placed.length; slab += perSlab) {
    const inSlab = placed.slice(slab, slab + perSlab).sort((a, b) => a.y - b.y);
    for (const { start, length } of inSlab) for (let i = 0; i < length; i++) order[at++] = start + i;
  }
  return order;
}

/** A box for every node, each before those below it. */
function boxesOver(order: Int32Array, edges: readonly Edge[]): OrientedBoxes {
  const boxes = orientedBoxes(Math.max(0, 2 * order.length - 1));
  const fill = (at: number, first: number, n: number): void => {
    if (n === 1) {
      storeBoxOfEdge(boxes, at, edges[order[first] as number] as Edge);
      return;
    }
    const half = n >> 1;
    fill(at + 1, first, half);
    fill(at + 2 * half, first + half, n - half);
    storeBoxAround(boxes, at, at + 1, at + 2 * half);
  };
  if (order.length > 0) fill(0, 0, order.length);
  return boxes;
}
