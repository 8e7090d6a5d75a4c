import type { Edge } from './edge.ts';
import { type OrientedBox, orientedBoxAround, orientedBoxesMeet, orientedBoxOfEdge } from './oriented-box.ts';

interface Node {
  readonly box: OrientedBox;
  /** The edge a leaf stands for; null above. */
  readonly edge: number | null;
  readonly children: readonly Node[];
}

/**
 * Calls `visit` for every two edges whose boxes come within `withinMm` of one another, each pair once, until it
 * returns false or `mostTests` boxes have been compared; says whether it came to the end. The edges are packed
 * sort-tile-recursive (Leutenegger, Lopez, Edgington 1997) under a binary tree of oriented boxes (Gottschalk, Lin,
 * Manocha 1996), which is joined with itself: n log n for edges that mostly lie apart, however they lie.
 */
export function forEachClosePair(
  edges: readonly Edge[],
  withinMm: number,
  mostTests: number,
  visit: (i: number, j: number) => boolean,
): boolean {
  let tests = 0;
  const inside = ({ children: [left, right] }: Node): boolean =>
    left === undefined || right === undefined || (inside(left) && inside(right) && between(left, right));
  const between = (a: Node, b: Node): boolean => {
    if (++tests > mostTests) return false;
    if (!orientedBoxesMeet(a.box, b.box, withinMm)) return true;
    if (a.edge !== null && b.edge !== null) return visit(a.edge, b.edge);
    const [parted, whole] = b.edge !== null || (a.edge === null && a.box.along > b.box.along) ? [a, b] : [b, a];
    return parted.children.every((child) => between(child, whole));
  };
  const boxes = edges.map(orientedBoxOfEdge);
  return edges.length === 0 || inside(treeOver(packed(boxes), boxes));
}

/** The boxes' indices in slabs from left to right, and in each from bottom to top. */
function packed(boxes: readonly OrientedBox[]): number[] {
  const order = sortedBy(boxes.keys(), (i) => boxAt(boxes, i).centre.x);
  const perSlab = Math.ceil(Math.sqrt(boxes.length));
  const slabs = Array.from({ length: Math.ceil(boxes.length / perSlab) }, (_, s) =>
    sortedBy(order.slice(s * perSlab, (s + 1) * perSlab), (i) => boxAt(boxes, i).centre.y),
  );
  return slabs.flat();
}

const sortedBy = (indices: Iterable<number>, key: (i: number) => number): number[] =>
  Array.from(indices).sort((i, j) => key(i) - key(j));

function treeOver(order: readonly number[], boxes: readonly OrientedBox[]): Node {
  const [only] = order;
  if (only !== undefined && order.length === 1) return { box: boxAt(boxes, only), edge: only, children: [] };
  const middle = order.length >> 1;
  const [left, right] = [treeOver(order.slice(0, middle), boxes), treeOver(order.slice(middle), boxes)];
  return { box: orientedBoxAround(left.box, right.box), edge: null, children: [left, right] };
}

const boxAt = (boxes: readonly OrientedBox[], i: number): OrientedBox => boxes[i] as OrientedBox;
