import type { Edge } from './edge.ts';
import {
  alongOf,
  boxesComeWithin,
  type OrientedBox,
  type OrientedBoxes,
  orientedBoxes,
  orientedBoxOfEdge,
  storeBox,
  storeBoxAround,
} from './oriented-box.ts';

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
  const boxes = edges.map(orientedBoxOfEdge);
  const order = packed(boxes);
  const tree = treeOver(order, boxes);
  let tests = 0;
  const inside = (a: Node): boolean =>
    a.count === 1 || (inside(leftOf(a)) && inside(rightOf(a)) && between(leftOf(a), rightOf(a)));
  const between = (a: Node, b: Node): boolean => {
    if (++tests > mostTests) return false;
    if (!boxesComeWithin(tree, a.at, b.at, withinMm)) return true;
    if (a.count === 1 && b.count === 1) return visit(order[a.first] as number, order[b.first] as number);
    const partsFirst = b.count === 1 || (a.count > 1 && alongOf(tree, a.at) > alongOf(tree, b.at));
    const [parted, whole] = partsFirst ? [a, b] : [b, a];
    return between(leftOf(parted), whole) && between(rightOf(parted), whole);
  };
  return edges.length === 0 || inside({ at: 0, first: 0, count: order.length });
}

/** A node of the tree: the place of its box, and which of the edges in order it holds. Each goes before what is below. */
interface Node {
  readonly at: number;
  readonly first: number;
  readonly count: number;
}

const leftOf = ({ at, first, count }: Node): Node => ({ at: at + 1, first, count: count >> 1 });

const rightOf = ({ at, first, count }: Node): Node => ({
  at: at + 2 * (count >> 1),
  first: first + (count >> 1),
  count: count - (count >> 1),
});

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

function treeOver(order: readonly number[], boxes: readonly OrientedBox[]): OrientedBoxes {
  const tree = orientedBoxes(Math.max(0, 2 * order.length - 1));
  const fill = (node: Node): void => {
    if (node.count === 1) {
      storeBox(tree, node.at, boxAt(boxes, order[node.first] as number));
      return;
    }
    const [left, right] = [leftOf(node), rightOf(node)];
    fill(left);
    fill(right);
    storeBoxAround(tree, node.at, left.at, right.at);
  };
  if (order.length > 0) fill({ at: 0, first: 0, count: order.length });
  return tree;
}

const boxAt = (boxes: readonly OrientedBox[], i: number): OrientedBox => boxes[i] as OrientedBox;
