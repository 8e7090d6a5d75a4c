import { cross, dot, lerp, sub, type Vec, vec } from '../plane/vec.ts';
import {
  endEdge,
  endX,
  endY,
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
  startX,
  startY,
} from './outline-tree.ts';
import { lookMm } from './tolerances.ts';

/**
 * How far along a ray it crosses the edges of a tree of straight edges, mm, in no order; of an edge's ends one belongs
 * to it. `along` is a unit vector.
 */
export function rayCrossings(tree: OutlineTree, from: Vec, along: Vec): number[] {
  const crossings: number[] = [];
  const open = tree.edgeCount > 0 ? [rootNode] : [];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (!straddles(tree, node, from, along)) continue;
    if (isLeaf(tree, node)) crossings.push(...crossingsOfLeaf(tree, node, from, along));
    else open.push(leftOf(node), rightOf(node));
  }
  return crossings;
}

/** Whether a node's box comes to both sides of the ray's line. */
function straddles(tree: OutlineTree, node: number, from: Vec, along: Vec): boolean {
  const [left, low] = [minX(tree, node), minY(tree, node)];
  const [right, high] = [maxX(tree, node), maxY(tree, node)];
  const off = along.x * ((low + high) / 2 - from.y) - along.y * ((left + right) / 2 - from.x);
  const reach = (Math.abs(along.x) * (high - low) + Math.abs(along.y) * (right - left)) / 2;
  return Math.abs(off) <= reach + lookMm;
}

function crossingsOfLeaf(tree: OutlineTree, leaf: number, from: Vec, along: Vec): number[] {
  const crossings: number[] = [];
  for (let edge = firstEdge(tree, leaf); edge < endEdge(tree, leaf); edge++) {
    const [a, b] = [vec(startX(tree, edge), startY(tree, edge)), vec(endX(tree, edge), endY(tree, edge))];
    const [toA, toB] = [sub(a, from), sub(b, from)];
    const [left, right] = [cross(along, toA), cross(along, toB)];
    if (left > 0 === right > 0) continue;
    const mm = dot(along, lerp(toA, toB, left / (left - right)));
    if (mm >= 0) crossings.push(mm);
  }
  return crossings;
}
