import { treeOf } from '../clearance/trees.ts';
import { leastDistance } from '../geometry/motion/least-distance.ts';
import { still } from '../geometry/motion/motion.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { loopsOf, type Polygons } from '../geometry/polygons.ts';
import { identity } from '../geometry/rigid.ts';
import { round6, roundPoint6 } from '../geometry/rounding.ts';
import type { Vec } from '../geometry/vec.ts';
import type { DepthRange, Hollow } from '../model/casting.ts';
import type { WallAnswer } from '../model/grind-answer.ts';
import type { Fit } from '../model/job.ts';
import type { BandCut } from './cut-band.ts';

/** How far a hand-held grinder strays from the line, mm, where the fit does not say; common practice, no source. */
const handErrorMm = 0.5;

export const handErrorOf = ({ cutter }: Fit): number => cutter?.handErrorMm ?? handErrorMm;

/**
 * The metal left between a cut and each hollow of the part, as a distance in space: `wallMm` from the last line, the
 * hand's and the hollow's own error taken off; `nominalMm` from the planned cut, nothing taken off.
 */
export function wallsBehind(hollows: readonly Hollow[], bands: readonly BandCut[], fit: Fit): WallAnswer[] {
  if (bands.length === 0 || hollows.length === 0) return [];
  const last = treesOf(bands, (band) => band.last);
  const planned = treesOf(bands, (band) => band.planned);
  return hollows.map((hollow) => {
    const least = nearest(hollow, last);
    const wallMm = least.mm - hollow.traceErrorMm - handErrorOf(fit);
    const keepMm = keepOf(hollow, fit);
    return {
      hollow: hollow.id,
      wallMm: round6(wallMm),
      nominalMm: round6(nearest(hollow, planned).mm),
      keepMm: keepMm === null ? null : round6(keepMm),
      at: roundPoint6(least.at),
      holds: holds(wallMm, keepMm),
    };
  });
}

/** A wall is kept to a micrometre; one that may not be there at all never holds. */
function holds(wallMm: number, keepMm: number | null): boolean | null {
  if (wallMm <= 0) return false;
  return keepMm === null ? null : wallMm >= keepMm - 1e-3;
}

function keepOf(hollow: Hollow, fit: Fit): number | null {
  const asked = [hollow.keepWallMm, fit.minWallMm].filter((mm) => mm !== null);
  return asked.length === 0 ? null : Math.max(...asked);
}

/** One line of every band. */
const treesOf = (bands: readonly BandCut[], line: (band: BandCut) => Polygons): LineTree[] =>
  bands.map((band) => ({ depth: band.depth, tree: buildOutlineTree(loopsOf(line(band))) }));

interface LineTree {
  readonly depth: DepthRange | null;
  readonly tree: OutlineTree;
}

function nearest(hollow: Hollow, lines: readonly LineTree[]): { mm: number; at: Vec } {
  const distances = lines.map(({ depth, tree }) => {
    const { distanceMm, fixedAt } = leastDistance(tree, treeOf(hollow.loops), identity, still);
    return { mm: Math.hypot(distanceMm, gapMm(depth, hollow.depth)), at: fixedAt };
  });
  return distances.reduce((a, b) => (a.mm <= b.mm ? a : b));
}

/** The gap between two ranges of depth; without depth, every depth. */
export const gapMm = (a: DepthRange | null, b: DepthRange | null): number =>
  a === null || b === null ? 0 : Math.max(0, a.fromMm - b.toMm, b.fromMm - a.toMm);
