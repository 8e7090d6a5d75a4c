import type { Wander } from '../../job/wander.ts';
import type { Joint } from '../../joint/joint.ts';
import type { StrayedResult, WanderResult } from '../check-result.ts';
import { leastOf, lowerBoundMm } from '../measure.ts';
import { errorsOf, type PairPassage, type PairRule, pairRule, pairsOn, placeErrors } from '../pairs.ts';
import { passageOf } from '../passages.ts';
import { type Sides, waysOf } from '../passings.ts';
import { turningRule } from '../rotating.ts';
import { type Solid, solidsSweptRound } from '../solids.ts';
import { type Stray, strays } from './strays.ts';

/**
 * What is kept on every path that strays no farther from the way in than a wander. Exact for turn and stand-off about the
 * axis, never too much for the others; on its dowels it is guided, and there the way itself counts.
 */
export function wanderOf(joint: Joint, wander: Wander, { fixed, moving }: Sides<Solid>): Omit<WanderResult, 'decides'> {
  const { wayInMm, rotatingMm } = joint.fit.clearance;
  const turning = turningRule(joint, placeErrors(joint));
  return {
    wander,
    ...strayedResult(strayPairs(joint, wander, { fixed, moving }, pairRule(joint)), wayInMm),
    rotating: joint.rotating.map((part) => ({
      part: part.name,
      ...strayedResult(strayPairs(joint, wander, { fixed: solidsSweptRound(part), moving }, turning), rotatingMm),
    })),
  };
}

/** How near a pair comes on a leg and within the wander about it, mm; less than 0 where it may touch by that much. */
interface StrayPair extends Pick<PairPassage, 'fixed' | 'moving' | 'view'> {
  /** Counts from 1. */
  readonly leg: number;
  readonly leastMm: number;
  readonly errorMm: number;
}

const views = ['as-measured', 'at-worst'] as const;

function strayPairs(joint: Joint, wander: Wander, sides: Sides<Solid>, rule: PairRule): StrayPair[] {
  const onTheWay = pairsOn(sides, waysOf(joint.fit.legs), rule).map(
    (pair): StrayPair => ({ ...pair, leg: pair.leg ?? 0, leastMm: lowerBoundMm(pair), errorMm: pair.errors.errorMm }),
  );
  const astray = views.flatMap((view) =>
    Array.from(strays(joint, wander, sides, rule.depth, view), (stray): StrayPair => {
      const { errorMm } = errorsOf(stray.fixed, stray.moving, rule.place);
      return { ...stray, view, leastMm: leastMmOf(stray), errorMm };
    }),
  );
  return [...onTheWay, ...astray];
}

function leastMmOf({ fixed, moving, start, motion, nearerMm }: Stray): number {
  const { state, distanceMm, toleranceMm } = passageOf(fixed.tree, moving.tree, start, motion);
  return (state === 'clear' ? (distanceMm ?? Number.POSITIVE_INFINITY) - toleranceMm : 0) - nearerMm;
}

const isUntraced = ({ fixed, moving }: StrayPair): boolean => fixed.untraced || moving.untraced;

/** Of a section without depth that is rocked nothing can be said. */
const isUnknown = ({ leastMm }: StrayPair): boolean => leastMm === Number.NEGATIVE_INFINITY;

/** The least over pairs; metal that nobody has looked for counts as soon as it would stand nearer than asked. */
function strayedResult(all: readonly StrayPair[], askedMm: number): StrayedResult {
  const counting = all.filter((pair) => !isUntraced(pair) || pair.leastMm < askedMm);
  const measured = counting.filter(({ view }) => view === 'as-measured');
  const isUndecided = measured.some((pair) => isUntraced(pair) || isUnknown(pair));
  const [nearest = null] = measured.toSorted((a, b) => a.leastMm - b.leastMm);
  const leastMm = leastOf(measured.filter((pair) => !isUnknown(pair)).map((pair) => pair.leastMm));
  return {
    state: isUndecided ? 'undecided' : 'clear',
    clearanceMm: isUndecided ? Math.min(0, leastMm ?? 0) : leastMm,
    worstClearanceMm: leastOf(counting.filter((pair) => !isUnknown(pair)).map((pair) => pair.leastMm - pair.errorMm)),
    nearest: nearest && { fixedSection: nearest.fixed.name, movingSection: nearest.moving.name, leg: nearest.leg },
  };
}
