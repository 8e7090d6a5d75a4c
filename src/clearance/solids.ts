import { circleLoop, type Region } from '../geometry/loop.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { vec } from '../geometry/vec.ts';
import type { Casting, DepthRange } from '../model/casting.ts';

/** A section, or the untraced rest of a part, ready to be measured in the joint frame. */
export interface Solid {
  readonly name: string;
  readonly depth: DepthRange | null;
  readonly tree: OutlineTree;
  readonly traceErrorMm: number;
  /** Metal may stand here, but nobody has looked. */
  readonly untraced: boolean;
}

/** Beyond every coordinate a job can hold, near enough to cost no digits. */
const everywhereMm = 4e6;

/** What stands for a part: its sections, and where it says how far the tracing goes, all beyond that. */
export function solidsOf(casting: Casting): Solid[] {
  const solids = casting.sections
    .filter((section) => section.loops.length > 0)
    .map((section) => ({
      name: section.id,
      depth: section.depth,
      tree: buildOutlineTree(section.loops),
      traceErrorMm: section.traceErrorMm,
      untraced: false,
    }));
  if (casting.traced === null) return solids;
  return [...solids, untracedSolid(casting.traced.loops, casting.traced.depth)];
}

/** Everything outside the traced loops: even-odd nesting turns them into holes of a disc that has no end in practice. */
function untracedSolid(traced: Region, depth: DepthRange | null): Solid {
  const tree = buildOutlineTree([...traced, circleLoop(vec(0, 0), everywhereMm)]);
  return { name: 'not traced here', depth, tree, traceErrorMm: 0, untraced: true };
}
