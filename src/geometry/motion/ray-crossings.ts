import { cross, dot, lerp, sub, type Vec, vec } from '../plane/vec.ts';
import { leafEdge, type OutlineTree } from './outline-tree.ts';

/** More than the rounding of a distance from the ray's line, mm: a box this near to it is looked into. */
const lookMm = 1e-9;

/**
 * How far along a ray it crosses the edges of a tree of straight edges, mm, in no order; of an edge's ends one belongs
 * to it. `along` is a unit vector.
 */
export function rayCrossings(tree: OutlineTree, from: Vec, along: Vec): number[] {
  const crossings: number[] = [];
  const open = tree.edgeCount > 0 ? [1] : [];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (!straddles(tree, node, from, along)) continue;
    if (node < tree.leafCount) open.push(2 * node, 2 * node + 1);
    else crossings.push(...crossingsOfLeaf(tree, node - tree.leafCount, from, along));
  }
  return crossings;
}

/** Whether a node's box comes to both sides of the ray's line. */
function straddles({ boxes }: OutlineTree, node: number, from: Vec, along: Vec): boolean {
  const i = 4 * node;
  const [minX, minY] = [boxes[i] as number, boxes[i + 1] as number];
  const [maxX, maxY] = [boxes[i + 2] as number, boxes[i + 3] as number];
  const off = along.x * ((minY + maxY) / 2 - from.y) - along.y * ((minX + maxX) / 2 - from.x);
  const reach = (Math.abs(along.x) * (maxY - minY) + Math.abs(along.y) * (maxX - minX)) / 2;
  return Math.abs(off) <= reach + lookMm;
}

function crossingsOfLeaf(tree: OutlineTree, leaf: number, from: Vec, along: Vec): number[] {
  const crossings: number[] = [];
  for (let edge = leafEdge(tree, leaf); edge < leafEdge(tree, leaf + 1); edge++) {
    const [ax, ay, bx, by] = tree.ends.subarray(4 * edge, 4 * edge + 4) as unknown as [number, number, number, number];
    const [toA, toB] = [sub(vec(ax, ay), from), sub(vec(bx, by), from)];
    const [left, right] = [cross(along, toA), cross(along, toB)];
    if (left > 0 === right > 0) continue;
    const mm = dot(along, lerp(toA, toB, left / (left - right)));
    if (mm >= 0) crossings.push(mm);
  }
  return crossings;
}
