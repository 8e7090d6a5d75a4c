import { overlapOf } from '../geometry/motion/overlap.ts';
import { leastToleranceMm } from '../geometry/motion/tolerances.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Leg } from '../job/path.ts';
import { fractionOfLeg, passageOnLeg } from './pairs.ts';
import { type Passing, passings, type Sides, type Way } from './passings.ts';
import { type Fractions, sharedFractions } from './shared-depth.ts';
import type { Solid } from './solids.ts';

/**
 * The least axial gap (mm) between ends of sections that stand over one another in the plane while they share no
 * depth, unlengthened; null when none do. Two ends that both lie on their mating faces do not count.
 */
export function endGapOn(solids: Sides<Solid>, ways: readonly Way[]): number | null {
  let least = Number.POSITIVE_INFINITY;
  for (const passing of passings(solids, ways)) {
    if (!isOfKnownEnds(passing)) continue;
    for (const part of unsharedParts(passing)) least = Math.min(least, gapOnPart(passing, part, least));
  }
  return least === Number.POSITIVE_INFINITY ? null : least;
}

/** Traced metal that ends somewhere. */
type EndedSolid = Solid & { readonly depth: DepthRange };

const isEnded = (solid: Solid): solid is EndedSolid => !solid.untraced && solid.depth !== null;

const isOfKnownEnds = (passing: Passing<Solid>): passing is Passing<EndedSolid> =>
  isEnded(passing.fixed) && isEnded(passing.moving);

/** What is left of a leg when the part that shares depth is taken out. */
function unsharedParts({ fixed, moving, leg }: Passing<EndedSolid>): Fractions[] {
  const shared = sharedFractions(fixed.depth, moving.depth, leg);
  if (shared === null) return [{ from: 0, to: 1 }];
  return [
    { from: 0, to: shared.from },
    { from: shared.to, to: 1 },
  ].filter(({ from, to }) => to > from);
}

function gapOnPart(passing: Passing<EndedSolid>, part: Fractions, least: number): number {
  const { fixed, moving, leg } = passing;
  const gapAt = (at: number): number => axialGap(fixed.depth, moving.depth, standOffAt(leg, at));
  // the stand-off runs linearly, so the gap of a part is least at one of its ends
  if (Math.min(gapAt(part.from), gapAt(part.to)) >= least) return least;
  const start = rigid(leg.from.turnRad, leg.from.shift);
  const constant = leg.from.standOffMm === leg.to.standOffMm;
  // at one stand-off any overlap will do, and the start is the cheapest place to look
  if (constant && overlapOf(fixed.tree, moving.tree, start, leastToleranceMm)) return gapAt(0);
  const { overlaps } = passageOnLeg(passing, part);
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
