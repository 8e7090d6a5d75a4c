import { identity } from '../rigid.ts';
import { type Vec, vec } from '../vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { EdgeSlot } from './edge-slot.ts';
import { leafEdge, type OutlineTree } from './outline-tree.ts';

const slot = new EdgeSlot();

/** The point of an outline nearest to `p`, inside or outside, and how far it is in mm; exact for lines and arcs. */
export function nearestOnOutline(tree: OutlineTree, p: Vec): { distanceMm: number; point: Vec } {
  const best = new ClosestPair();
  if (tree.edgeCount > 0) descend(tree, 1, p.x, p.y, best);
  return { distanceMm: best.distanceMm, point: vec(best.qx, best.qy) };
}

function descend(tree: OutlineTree, node: number, x: number, y: number, best: ClosestPair): void {
  if (node >= tree.leafCount) {
    const leaf = node - tree.leafCount;
    for (let edge = leafEdge(tree, leaf); edge < leafEdge(tree, leaf + 1); edge++) {
      slot.load(tree, edge, identity);
      best.measurePoint(x, y, slot);
    }
    return;
  }
  const left = squaredToBox(tree, 2 * node, x, y);
  const right = squaredToBox(tree, 2 * node + 1, x, y);
  const near = left <= right ? 2 * node : 2 * node + 1;
  if (Math.min(left, right) < best.squaredMm2) descend(tree, near, x, y, best);
  if (Math.max(left, right) < best.squaredMm2) descend(tree, near ^ 1, x, y, best);
}

function squaredToBox({ boxes }: OutlineTree, node: number, x: number, y: number): number {
  const i = 4 * node;
  const dx = Math.max((boxes[i] as number) - x, 0, x - (boxes[i + 2] as number));
  const dy = Math.max((boxes[i + 1] as number) - y, 0, y - (boxes[i + 3] as number));
  return dx * dx + dy * dy;
}
