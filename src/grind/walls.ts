import { treeOf } from '../clearance/trees.ts';
import { leastDistance } from '../geometry/motion/least-distance.ts';
import { still } from '../geometry/motion/motion.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { loopsOf, type Polygons } from '../geometry/polygons.ts';
import { identity } from '../geometry/rigid.ts';
import { round6, roundPoint6 } from '../geometry/rounding.ts';
import type { Vec } from '../geometry/vec.ts';
import type { DepthRange } from '../model/casting.ts';
import type { WallAnswer } from '../model/grind-answer.ts';
import type { Fit } from '../model/job.ts';
import type { BandCut } from './cut-band.ts';
import type { Guard } from './guards.ts';

/** How far a hand-held grinder strays from the line, mm, where the fit does not say; common practice, no source. */
const handErrorMm = 0.5;

export const handErrorOf = ({ cutter }: Fit): number => cutter?.handErrorMm ?? handErrorMm;

/** A hole farther from every cut than this, mm, is not spoken of, unless more is to be kept; common practice, no source. */
const inReachMm = 25;

/**
 * The metal left between a cut and each hollow and hole of the part, as a distance in space: `wallMm` from the last line,
 * the hand's and the guarded room's own error taken off; `nominalMm` from the planned cut, nothing taken off.
 */
export function wallsBehind(guards: readonly Guard[], bands: readonly BandCut[], fit: Fit): WallAnswer[] {
  if (bands.length === 0 || guards.length === 0) return [];
  const last = bands.map((band) => lineTree(band.lastDepth, band.last));
  const planned = bands.map((band) => lineTree(band.depth, band.planned));
  return guards.flatMap((guard): WallAnswer[] => {
    const { keepMm, keepBy, isDepthAssumed, kind, id } = guard;
    const least = nearest(guard, last);
    const wallMm = least.mm - guard.traceErrorMm - handErrorOf(fit);
    if (kind === 'hole' && least.mm > Math.max(inReachMm, 2 * (keepMm ?? 0))) return [];
    return [
      {
        hollow: id,
        kind,
        wallMm: round6(wallMm),
        nominalMm: round6(nearest(guard, planned).mm),
        keepMm: keepMm === null ? null : round6(keepMm),
        keepBy,
        depthAssumed: isDepthAssumed,
        at: roundPoint6(least.at),
        holds: holdsWall(wallMm, keepMm),
      },
    ];
  });
}

/** A wall is kept to a micrometre; one that may not be there at all never holds. */
export function holdsWall(wallMm: number, keepMm: number | null): boolean | null {
  if (wallMm <= 0) return false;
  return keepMm === null ? null : wallMm >= keepMm - 1e-3;
}

interface LineTree {
  readonly depth: DepthRange | null;
  readonly tree: OutlineTree;
}

export const treeOfLine = (line: Polygons): OutlineTree => buildOutlineTree(loopsOf(line));

const lineTree = (depth: DepthRange | null, line: Polygons): LineTree => ({ depth, tree: treeOfLine(line) });

interface Near {
  readonly mm: number;
  readonly at: Vec;
}

const nearest = (guard: Guard, lines: readonly LineTree[]): Near =>
  lines.map(({ depth, tree }) => nearestTo(guard, depth, tree)).reduce((a, b) => (a.mm <= b.mm ? a : b));

function nearestTo(guard: Guard, depth: DepthRange | null, tree: OutlineTree): Near {
  const { distanceMm, fixedAt } = leastDistance(tree, treeOf(guard.loops), identity, still);
  return { mm: Math.hypot(distanceMm, gapMm(depth, guard.depth)), at: fixedAt };
}

/** How far metal over a range of depth is from guarded room, in space; mm. */
export const distanceToGuard = (guard: Guard, depth: DepthRange | null, tree: OutlineTree): number =>
  nearestTo(guard, depth, tree).mm;

/** The gap between two ranges of depth; without depth, every depth. */
export const gapMm = (a: DepthRange | null, b: DepthRange | null): number =>
  a === null || b === null ? 0 : Math.max(0, a.fromMm - b.toMm, b.fromMm - a.toMm);
