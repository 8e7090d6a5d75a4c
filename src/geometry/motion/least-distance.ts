import type { Rigid } from '../plane/rigid.ts';
import { type EdgePair, Nearest } from './leg-measure.ts';
import { measureOf } from './leg-of-motion.ts';
import type { Motion } from './motion.ts';
import type { OutlineTree } from './outline-tree.ts';
import { startsInside } from './overlap.ts';
import { type Witness, witnessOf } from './passage.ts';
import { anyContact, measureEdges, searchNearest } from './search.ts';

/** The least distance of two solids on one motion, with the edges it is between. */
export interface LeastDistance extends Witness {
  readonly distanceMm: number;
  readonly toleranceMm: number;
  /** Handed to the next, similar question it makes that one quicker; null where either solid is empty. */
  readonly edges: EdgePair | null;
}

/**
 * The least distance (mm) between a fixed solid and a moving one placed by `start` over a motion; 0 when they touch or
 * overlap at any instant, infinite where either has no edges. `seed`, the edges of a neighbouring answer, are measured
 * first: any pair is right, a good one prunes more.
 */
export function leastDistance(
  fixed: OutlineTree,
  moving: OutlineTree,
  start: Rigid,
  motion: Motion,
  seed: EdgePair | null = null,
): LeastDistance {
  const leg = measureOf(fixed, moving, start, motion);
  const best = new Nearest();
  if (seed) measureEdges(leg, seed.fixed, seed.moving, best);
  if (fixed.edgeCount > 0 && moving.edgeCount > 0) searchNearest({ fixed, moving, leg }, best);
  const meets = startsInside(fixed, moving, start) || anyContact({ fixed, moving, leg });
  const distanceMm = meets ? 0 : best.distanceMm;
  return { ...witnessOf(best), distanceMm, toleranceMm: leg.toleranceMm, edges: best.edges };
}

/**
 * Whether two solids stay at least `clearanceMm` apart at every instant of a motion. Stops at the first pair of edges
 * that comes nearer, so a "no" is cheap; `seed` as for `leastDistance`.
 */
export function staysClear(
  fixed: OutlineTree,
  moving: OutlineTree,
  start: Rigid,
  motion: Motion,
  clearanceMm: number,
  seed: EdgePair | null = null,
): boolean {
  if (fixed.edgeCount === 0 || moving.edgeCount === 0) return true;
  const leg = measureOf(fixed, moving, start, motion);
  const best = new Nearest();
  best.distanceMm = clearanceMm;
  if (seed) measureEdges(leg, seed.fixed, seed.moving, best);
  searchNearest({ fixed, moving, leg }, best, clearanceMm);
  return best.distanceMm >= clearanceMm && !startsInside(fixed, moving, start) && !anyContact({ fixed, moving, leg });
}
