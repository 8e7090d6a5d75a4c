import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import { ringsSwept } from '../geometry/motion/rings.ts';
import { circleLoop, type Region } from '../geometry/plane/loop.ts';
import { vec } from '../geometry/plane/vec.ts';
import { remembered } from '../geometry/remembered.ts';
import type { Casting, DepthRange } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { Sides } from './passings.ts';
import { stretchOf } from './shared-depth.ts';
import { treeOf } from './trees.ts';

/** A section, or the untraced rest of a part, ready to be measured in the joint frame. */
export interface Solid {
  readonly name: string;
  readonly depth: DepthRange | null;
  /** The depth of the whole section that it is a part of. */
  readonly whole: DepthRange | null;
  readonly depthErrorMm: number;
  readonly tree: OutlineTree;
  readonly traceErrorMm: number;
  /** Metal may stand here, but nobody has looked. */
  readonly untraced: boolean;
}

/** Beyond every coordinate a job can hold, near enough to cost no digits. */
const everywhereMm = 4e6;

/** What stands for a part: its sections, and where it says how far the tracing goes, all beyond that. */
export const solidsOf = (casting: Casting): Solid[] => solidsAs(casting, (region) => region);

/** What stands for a part that runs round the axis: the rings it sweeps, and those of what was not traced of it. */
export const solidsSweptRound = (casting: Casting): Solid[] => solidsAs(casting, ringsOf);

export const sidesOf = ({ fixed, moving }: Pick<Joint, 'fixed' | 'moving'>): Sides<Solid> => ({
  fixed: solidsOf(fixed),
  moving: solidsOf(moving),
});

const axis = vec(0, 0);

const rings = remembered<Region>(1);
const ringsOf = (region: Region): Region => rings(region, '', () => ringsSwept(region, axis));

function solidsAs({ sections, traced }: Casting, covered: (region: Region) => Region): Solid[] {
  const solids = sections
    .filter(({ loops }) => loops.length > 0)
    .map((section) => ({
      name: section.id,
      ...stretchOf(section),
      tree: treeOf(covered(section.loops)),
      traceErrorMm: section.traceErrorMm,
      untraced: false,
    }));
  if (traced === null) return solids;
  const beyond = treeOf(covered(allBeyond(traced.loops)));
  const { depth } = traced;
  const untraced = { name: 'not traced here', depth, whole: depth, depthErrorMm: 0, traceErrorMm: 0, untraced: true };
  return [...solids, { ...untraced, tree: beyond }];
}

/** Everything outside some loops: even-odd nesting turns them into holes of a disc that has no end in practice. */
function allBeyond(traced: Region): Region {
  const beyond = beyondOf.get(traced) ?? [...traced, circleLoop(axis, everywhereMm)];
  beyondOf.set(traced, beyond);
  return beyond;
}

const beyondOf = new WeakMap<Region, Region>();
