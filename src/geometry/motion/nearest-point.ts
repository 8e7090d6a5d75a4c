import { identity } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { EdgeSlot } from './edge-slot.ts';
import { leafEdge, type OutlineTree } from './outline-tree.ts';

const slot = new EdgeSlot();

/**
 * The point of an outline nearest to `p`, inside or outside, how far it is in mm, and on which edge of the tree it lies;
 * exact for lines and arcs.
 */
export function nearestOnOutline(tree: OutlineTree, p: Vec): { distanceMm: number; point: Vec; edge: number } {
  const best = new ClosestPair();
  const edge = tree.edgeCount > 0 ? descend(tree, 1, p.x, p.y, best, -1) : -1;
  return { distanceMm: best.distanceMm, point: vec(best.qx, best.qy), edge };
}

/** Whether any of an outline is nearer to `p` than so many mm; quick where something is. */
export const isWithin = (tree: OutlineTree, { x, y }: Vec, mm: number): boolean =>
  tree.edgeCount > 0 && reaches(tree, 1, x, y, mm * mm, new ClosestPair());

function reaches(
  tree: OutlineTree,
  node: number,
  x: number,
  y: number,
  squaredMm2: number,
  pair: ClosestPair,
): boolean {
  if (node >= tree.leafCount) {
    const leaf = node - tree.leafCount;
    for (let edge = leafEdge(tree, leaf); edge < leafEdge(tree, leaf + 1); edge++) {
      slot.load(tree, edge, identity);
      pair.measurePoint(x, y, slot);
    }
    return pair.squaredMm2 < squaredMm2;
  }
  const [left, right] = [squaredToBox(tree, 2 * node, x, y), squaredToBox(tree, 2 * node + 1, x, y)];
  const near = left <= right ? 2 * node : 2 * node + 1;
  return (
    (Math.min(left, right) < squaredMm2 && reaches(tree, near, x, y, squaredMm2, pair)) ||
    (Math.max(left, right) < squaredMm2 && reaches(tree, near ^ 1, x, y, squaredMm2, pair))
  );
}

/** The nearest edge below a node, or `found` where none beats the best. */
function descend(tree: OutlineTree, node: number, x: number, y: number, best: ClosestPair, found: number): number {
  if (node >= tree.leafCount) {
    const leaf = node - tree.leafCount;
    for (let edge = leafEdge(tree, leaf); edge < leafEdge(tree, leaf + 1); edge++) {
      const before = best.squaredMm2;
      slot.load(tree, edge, identity);
      best.measurePoint(x, y, slot);
      if (best.squaredMm2 < before) found = edge;
    }
    return found;
  }
  const left = squaredToBox(tree, 2 * node, x, y);
  const right = squaredToBox(tree, 2 * node + 1, x, y);
  const near = left <= right ? 2 * node : 2 * node + 1;
  let nearest = found;
  if (Math.min(left, right) < best.squaredMm2) nearest = descend(tree, near, x, y, best, nearest);
  if (Math.max(left, right) < best.squaredMm2) nearest = descend(tree, near ^ 1, x, y, best, nearest);
  return nearest;
}

function squaredToBox({ boxes }: OutlineTree, node: number, x: number, y: number): number {
  const i = 4 * node;
  const dx = Math.max((boxes[i] as number) - x, 0, x - (boxes[i + 2] as number));
  const dy = Math.max((boxes[i + 1] as number) - y, 0, y - (boxes[i + 3] as number));
  return dx * dx + dy * dy;
}
