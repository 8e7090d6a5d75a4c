import { orient2d } from 'robust-predicates';
import { leafEdge, type OutlineTree } from './outline-tree.ts';

/**
 * Whether a point lies inside the region of a tree, by even-odd nesting. A ray to +x crosses an arc as often as it
 * crosses the arc's chord, once more or less when the point lies between the two; the side of a chord is decided by a
 * robust predicate. A point on the outline itself may be told either way.
 */
export function regionContains(tree: OutlineTree, x: number, y: number): boolean {
  return tree.edgeCount > 0 && crossingsAreOdd(tree, 1, x, y);
}

function crossingsAreOdd(tree: OutlineTree, node: number, x: number, y: number): boolean {
  const { boxes, leafCount } = tree;
  const i = 4 * node;
  if (y < (boxes[i + 1] as number) || x > (boxes[i + 2] as number) || y > (boxes[i + 3] as number)) return false;
  if (node < leafCount) {
    return crossingsAreOdd(tree, 2 * node, x, y) !== crossingsAreOdd(tree, 2 * node + 1, x, y);
  }
  const leaf = node - leafCount;
  const to = leafEdge(tree, leaf + 1);
  let odd = false;
  for (let edge = leafEdge(tree, leaf); edge < to; edge++) {
    if (crossesEdge(tree, edge, x, y)) odd = !odd;
  }
  return odd;
}

function crossesEdge({ ends, arcs }: OutlineTree, edge: number, x: number, y: number): boolean {
  const i = 4 * edge;
  const ax = ends[i] as number;
  const ay = ends[i + 1] as number;
  const bx = ends[i + 2] as number;
  const by = ends[i + 3] as number;
  const radius = arcs[i + 2] as number;
  const straddles = ay > y !== by > y;
  if (!straddles && radius === 0) return false;
  // the predicate takes y downward: positive where the point lies to the right of a → b
  const right = ax === bx && ay === by ? 0 : orient2d(ax, ay, bx, by, x, y);
  const chord = straddles && (by > ay ? right < 0 : right > 0);
  if (radius === 0) return chord;
  const beyondChord = (ax === bx && ay === by) || ((arcs[i + 3] as number) > 0 ? right > 0 : right < 0);
  const inDisc = Math.hypot(x - (arcs[i] as number), y - (arcs[i + 1] as number)) < radius;
  return chord !== (beyondChord && inDisc);
}
