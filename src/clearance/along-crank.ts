import type { Leg } from '../job/path.ts';
import { axialGap, standOffAt } from './end-gap.ts';
import { stateOf } from './measure.ts';
import { fractionOfLeg, type PairPassage } from './pairs.ts';
import { atHome } from './passings.ts';
import { sharedFractions } from './shared-depth.ts';

/**
 * How near, along the crank, the fouling pairs come to one another while their outlines overlap, mm: 0 where one goes
 * into another; more where they only pass end to end nearer than the depth margin; null where none fouls.
 */
export function alongCrankMm(pairs: readonly PairPassage[], legs: readonly Leg[]): number | null {
  const gaps = pairs
    .filter((pair) => pair.view === 'as-measured' && stateOf(pair) === 'fouls')
    .map((pair) => gapOf(pair, legs));
  return gaps.length === 0 ? null : Math.min(...gaps);
}

function gapOf({ fixed, moving, leg: count, fractions, passage }: PairPassage, legs: readonly Leg[]): number {
  const leg = count === null ? atHome.leg : legs[count - 1];
  const [f, m] = [fixed.depth, moving.depth];
  if (leg === undefined || f === null || m === null) return 0;
  const shared = sharedFractions(f, m, leg);
  const gaps = passage.overlaps.map(({ from, to }) => {
    const [start, end] = [fractionOfLeg(fractions, from), fractionOfLeg(fractions, to)];
    if (shared !== null && shared.from < end && start < shared.to) return 0;
    // the stand-off runs linearly, so the gap is least at one of the ends
    return Math.min(...[start, end].map((at) => axialGap(f, m, standOffAt(leg, at))));
  });
  return Math.min(...gaps);
}
