import { orient2d } from 'robust-predicates';
import {
  centreX,
  centreY,
  endEdge,
  endX,
  endY,
  firstEdge,
  isLeaf,
  leftOf,
  maxX,
  maxY,
  minY,
  type OutlineTree,
  radiusOf,
  rightOf,
  rootNode,
  startX,
  startY,
  sweepRadOf,
} from './outline-tree.ts';

/**
 * Whether a point lies inside the region of a tree, by even-odd nesting. A ray to +x crosses an arc as often as it
 * crosses the arc's chord, once more or less when the point lies between the two; the side of a chord is decided by a
 * robust predicate. A point on the outline itself may be told either way.
 */
export function regionContains(tree: OutlineTree, x: number, y: number): boolean {
  return tree.edgeCount > 0 && crossingsAreOdd(tree, rootNode, x, y);
}

function crossingsAreOdd(tree: OutlineTree, node: number, x: number, y: number): boolean {
  if (y < minY(tree, node) || x > maxX(tree, node) || y > maxY(tree, node)) return false;
  if (!isLeaf(tree, node)) {
    return crossingsAreOdd(tree, leftOf(node), x, y) !== crossingsAreOdd(tree, rightOf(node), x, y);
  }
  const to = endEdge(tree, node);
  let odd = false;
  for (let edge = firstEdge(tree, node); edge < to; edge++) {
    if (crossesEdge(tree, edge, x, y)) odd = !odd;
  }
  return odd;
}

function crossesEdge(tree: OutlineTree, edge: number, x: number, y: number): boolean {
  const ax = startX(tree, edge);
  const ay = startY(tree, edge);
  const bx = endX(tree, edge);
  const by = endY(tree, edge);
  const radius = radiusOf(tree, edge);
  const straddles = ay > y !== by > y;
  if (!straddles && radius === 0) return false;
  // the predicate takes y downward: positive where the point lies to the right of a → b
  const right = ax === bx && ay === by ? 0 : orient2d(ax, ay, bx, by, x, y);
  const chord = straddles && (by > ay ? right < 0 : right > 0);
  if (radius === 0) return chord;
  const beyondChord = (ax === bx && ay === by) || (sweepRadOf(tree, edge) > 0 ? right > 0 : right < 0);
  const inDisc = Math.hypot(x - centreX(tree, edge), y - centreY(tree, edge)) < radius;
  return chord !== (beyondChord && inDisc);
}
