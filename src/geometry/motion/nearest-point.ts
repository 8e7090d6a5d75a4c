import { identity } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { EdgeSlot } from './edge-slot.ts';
import {
  endEdge,
  firstEdge,
  isLeaf,
  leftOf,
  maxX,
  maxY,
  minX,
  minY,
  type OutlineTree,
  rightOf,
  rootNode,
  siblingOf,
} from './outline-tree.ts';

const slot = new EdgeSlot();

/**
 * The point of an outline nearest to `p`, inside or outside, how far it is in mm, and on which edge of the tree it lies;
 * exact for lines and arcs. An edge that may well lie near, such as the one nearest to the point before, saves the way.
 */
export function nearestOnOutline(
  tree: OutlineTree,
  p: Vec,
  likely = -1,
): { distanceMm: number; point: Vec; edge: number } {
  const best = new ClosestPair();
  if (likely >= 0) {
    slot.load(tree, likely, identity);
    best.measurePoint(p.x, p.y, slot);
  }
  const edge = tree.edgeCount > 0 ? descend(tree, rootNode, p.x, p.y, best, likely) : -1;
  return { distanceMm: best.distanceMm, point: vec(best.qx, best.qy), edge };
}

/** Whether any of an outline is nearer to `p` than so many mm; quick where something is. */
export const isWithin = (tree: OutlineTree, { x, y }: Vec, mm: number): boolean =>
  tree.edgeCount > 0 && reaches(tree, rootNode, x, y, mm * mm, new ClosestPair());

function reaches(
  tree: OutlineTree,
  node: number,
  x: number,
  y: number,
  squaredMm2: number,
  pair: ClosestPair,
): boolean {
  if (isLeaf(tree, node)) {
    for (let edge = firstEdge(tree, node); edge < endEdge(tree, node); edge++) {
      slot.load(tree, edge, identity);
      pair.measurePoint(x, y, slot);
    }
    return pair.squaredMm2 < squaredMm2;
  }
  const [left, right] = [squaredToBox(tree, leftOf(node), x, y), squaredToBox(tree, rightOf(node), x, y)];
  const near = left <= right ? leftOf(node) : rightOf(node);
  return (
    (Math.min(left, right) < squaredMm2 && reaches(tree, near, x, y, squaredMm2, pair)) ||
    (Math.max(left, right) < squaredMm2 && reaches(tree, siblingOf(near), x, y, squaredMm2, pair))
  );
}

/** The nearest edge below a node, or `found` where none beats the best. */
function descend(tree: OutlineTree, node: number, x: number, y: number, best: ClosestPair, found: number): number {
  if (isLeaf(tree, node)) {
    for (let edge = firstEdge(tree, node); edge < endEdge(tree, node); edge++) {
      const before = best.squaredMm2;
      slot.load(tree, edge, identity);
      best.measurePoint(x, y, slot);
      if (best.squaredMm2 < before) found = edge;
    }
    return found;
  }
  const left = squaredToBox(tree, leftOf(node), x, y);
  const right = squaredToBox(tree, rightOf(node), x, y);
  const near = left <= right ? leftOf(node) : rightOf(node);
  let nearest = found;
  if (Math.min(left, right) < best.squaredMm2) nearest = descend(tree, near, x, y, best, nearest);
  if (Math.max(left, right) < best.squaredMm2) nearest = descend(tree, siblingOf(near), x, y, best, nearest);
  return nearest;
}

function squaredToBox(tree: OutlineTree, node: number, x: number, y: number): number {
  const dx = Math.max(minX(tree, node) - x, 0, x - maxX(tree, node));
  const dy = Math.max(minY(tree, node) - y, 0, y - maxY(tree, node));
  return dx * dx + dy * dy;
}
