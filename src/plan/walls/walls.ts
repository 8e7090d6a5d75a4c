import type { OutlineTree } from '../../geometry/motion/outline-tree.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import type { Polygons } from '../../geometry/polygons/polygons.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import type { BandCut } from '../bands/cut-band.ts';
import { type Near, nearestTo, treeOfLine } from './guard-distance.ts';
import type { Guard, KeepBy } from './guards.ts';

/** The metal left between a cut and room behind it, mm. */
export interface WallBehind {
  /** Of the hollow or hole behind the cut. */
  readonly hollow: string;
  readonly kind: Guard['kind'];
  /** From the last line, the hand's and the hollow's errors taken off. */
  readonly wallMm: number;
  /** From the planned cut, nothing taken off. */
  readonly nominalMm: number;
  readonly keepMm: number | null;
  readonly keepBy: KeepBy | null;
  readonly isDepthAssumed: boolean;
  readonly at: Vec;
  readonly holds: boolean | null;
}

/** How far a hand-held grinder strays from the line, mm, where the fit does not say; common practice, no source. */
const handErrorMm = 0.5;

export const handErrorOf = ({ cutter }: Fit): number => cutter?.handErrorMm ?? handErrorMm;

/** A hole farther from every cut than this, mm, is not spoken of, unless more is to be kept; common practice, no source. */
const inReachMm = 25;

/**
 * The metal left between a cut and each hollow and hole of the part, as a distance in space: `wallMm` from the last line,
 * the hand's and the guarded room's own error taken off; `nominalMm` from the planned cut, nothing taken off.
 */
export function wallsBehind(guards: readonly Guard[], bands: readonly BandCut[], fit: Fit): WallBehind[] {
  if (bands.length === 0 || guards.length === 0) return [];
  const last = bands.map((band) => lineTree(band.lastDepth, band.last));
  const planned = bands.map((band) => lineTree(band.depth, band.planned));
  return guards.flatMap((guard): WallBehind[] => {
    const { keepMm, keepBy, isDepthAssumed, kind, id } = guard;
    const least = nearest(guard, last);
    const wallMm = least.mm - guard.traceErrorMm - handErrorOf(fit);
    if (kind === 'hole' && least.mm > Math.max(inReachMm, 2 * (keepMm ?? 0))) return [];
    return [
      {
        hollow: id,
        kind,
        wallMm,
        nominalMm: nearest(guard, planned).mm,
        keepMm,
        keepBy,
        isDepthAssumed,
        at: least.at,
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

const lineTree = (depth: DepthRange | null, line: Polygons): LineTree => ({ depth, tree: treeOfLine(line) });

const nearest = (guard: Guard, lines: readonly LineTree[]): Near =>
  lines.map(({ depth, tree }) => nearestTo(guard, depth, tree)).reduce((a, b) => (a.mm <= b.mm ? a : b));
