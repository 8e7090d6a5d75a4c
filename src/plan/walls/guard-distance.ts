import { treeOf } from '../../clearance/trees.ts';
import { leastDistance } from '../../geometry/motion/least-distance.ts';
import { still } from '../../geometry/motion/motion.ts';
import { buildOutlineTree, type OutlineTree } from '../../geometry/motion/outline-tree.ts';
import { identity } from '../../geometry/plane/rigid.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { DepthRange } from '../../job/casting.ts';
import { gapMm } from '../bands/depth-ranges.ts';
import type { Guard } from './guards.ts';

export const treeOfLine = (line: Polygons): OutlineTree => buildOutlineTree(loopsOf(line));

/** The place of metal that is nearest to guarded room, and how far that is in space, mm. */
export interface Near {
  readonly mm: number;
  readonly at: Vec;
}

export function nearestTo(guard: Guard, depth: DepthRange | null, tree: OutlineTree): Near {
  const { distanceMm, fixedAt } = leastDistance(tree, treeOf(guard.loops), identity, still);
  return { mm: Math.hypot(distanceMm, gapMm(depth, guard.depth)), at: fixedAt };
}

/** How far metal over a range of depth is from guarded room, in space; mm. */
export const distanceToGuard = (guard: Guard, depth: DepthRange | null, tree: OutlineTree): number =>
  nearestTo(guard, depth, tree).mm;
