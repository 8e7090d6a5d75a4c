import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';

const built = new WeakMap<Region, OutlineTree>();

/** The tree of a region, built once for as long as the region is in use. */
export function treeOf(region: Region): OutlineTree {
  const tree = built.get(region) ?? buildOutlineTree(region);
  built.set(region, tree);
  return tree;
}
