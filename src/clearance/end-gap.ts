import { still } from '../geometry/motion/motion.ts';
import { overlapOf } from '../geometry/motion/overlap.ts';
import { leastToleranceMm } from '../geometry/motion/tolerances.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import type { DepthRange } from '../job/casting.ts';
import { home, type Leg } from '../job/path.ts';
import { fractionOfLeg, passageOnLeg } from './pairs.ts';
import { type Fractions, sharedFractions } from './shared-depth.ts';
import type { Solid } from './solids.ts';

/**
 * The least axial gap (mm) between ends of sections that stand over one another in the plane while they share no
 * depth, unlengthened; null when none do. Two ends that both lie on their mating faces do not count.
 */
export function endGapOnLegs(fixed: readonly Solid[], moving: readonly Solid[], legs: readonly Leg[]): number | null {
  let least = Number.POSITIVE_INFINITY;
  for (const leg of legs) {
    for (const f of fixed) {
      for (const m of moving) {
        if (f.untraced || m.untraced || f.depth === null || m.depth === null) continue;
        for (const part of unsharedParts(f.depth, m.depth, leg)) {
          least = Math.min(least, gapOnPart(f, m, leg, part, least));
        }
      }
    }
  }
  return least === Number.POSITIVE_INFINITY ? null : least;
}

export function endGapAtHome(fixed: readonly Solid[], moving: readonly Solid[]): number | null {
  return endGapOnLegs(fixed, moving, [{ from: home, to: home, motion: still }]);
}

/** What is left of a leg when the part that shares depth is taken out. */
function unsharedParts(fixed: DepthRange, moving: DepthRange, leg: Leg): Fractions[] {
  const shared = sharedFractions(fixed, moving, leg);
  if (shared === null) return [{ from: 0, to: 1 }];
  return [
    { from: 0, to: shared.from },
    { from: shared.to, to: 1 },
  ].filter(({ from, to }) => to > from);
}

function gapOnPart(f: Solid, m: Solid, leg: Leg, part: Fractions, least: number): number {
  const gapAt = (at: number): number => axialGap(f.depth as DepthRange, m.depth as DepthRange, standOffAt(leg, at));
  // the stand-off runs linearly, so the gap of a part is least at one of its ends
  if (Math.min(gapAt(part.from), gapAt(part.to)) >= least) return least;
  const start = rigid(leg.from.turnRad, leg.from.shift);
  const constant = leg.from.standOffMm === leg.to.standOffMm;
  // at one stand-off any overlap will do, and the start is the cheapest place to look
  if (constant && overlapOf(f.tree, m.tree, start, leastToleranceMm)) return gapAt(0);
  const { overlaps } = passageOnLeg(f, m, leg, part);
  const instants = overlaps.flatMap(({ from, to }) => [from, to].map((at) => fractionOfLeg(part, at)));
  return Math.min(least, ...instants.map(gapAt));
}

/** Gap between the facing ends; infinite where both lie on their own mating faces. */
export function axialGap(fixed: DepthRange, moving: DepthRange, standOffMm: number): number {
  const above = standOffMm + moving.fromMm + fixed.fromMm;
  const below = -fixed.toMm - standOffMm - moving.toMm;
  const faceToFace = above >= below ? moving.fromMm === 0 && fixed.fromMm === 0 : moving.toMm === 0 && fixed.toMm === 0;
  return faceToFace ? Number.POSITIVE_INFINITY : Math.max(0, above, below);
}

export const standOffAt = ({ from, to }: Pick<Leg, 'from' | 'to'>, at: number): number =>
  from.standOffMm + at * (to.standOffMm - from.standOffMm);
