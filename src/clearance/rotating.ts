import type { Casting, DepthRange } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { RotatingResult } from './check-result.ts';
import { type Measure, measureOf } from './measure.ts';
import { instantOf, nearestOf } from './moments.ts';
import { type PairPassage, type PairRule, pairsOn, placeErrors } from './pairs.ts';
import { atHome, type Sides, waysOf } from './passings.ts';
import { type Solid, solidsSweptRound } from './solids.ts';

export interface RotatingMeasure {
  readonly result: RotatingResult;
  readonly measure: Measure;
}

/**
 * A rotating part against the moving part (home and every leg) and against the fixed part. It is taken as the rings
 * it sweeps; instead of the depth margin the other part is lengthened by the rotating clearance.
 */
export function* checkRotating(
  joint: Joint,
  part: Casting,
  { fixed, moving }: Sides<Solid>,
): Generator<void, RotatingMeasure[]> {
  const rings = solidsSweptRound(part);
  return [
    rotatingMeasure(joint, part, 'moving', yield* againstMoving(joint, rings, moving)),
    rotatingMeasure(joint, part, 'fixed', againstFixed(joint, rings, fixed)),
  ];
}

/** Yields before each leg. */
function* againstMoving(
  joint: Joint,
  rings: readonly Solid[],
  moving: readonly Solid[],
): Generator<void, PairPassage[]> {
  const rule = turningRule(joint, placeErrors(joint));
  const pairs: PairPassage[] = [];
  for (const way of [atHome, ...waysOf(joint.fit.legs)]) {
    yield;
    pairs.push(...pairsOn({ fixed: rings, moving }, [way], rule));
  }
  return pairs;
}

/** What turns has no mating face, so no end is left out. */
export const turningRule = (joint: Joint, place: PairRule['place']): PairRule => ({
  depth: { marginMm: joint.fit.clearance.rotatingMm, facesMate: false },
  place,
});

const againstFixed = (joint: Joint, rings: readonly Solid[], fixed: readonly Solid[]): PairPassage[] =>
  pairsOn({ fixed: rings, moving: standingForTurning(fixed) }, [atHome], turningRule(joint, []));

/** The fixed part stands still: told as a moving part at home, its depths turned to the moving side's sense. */
export const standingForTurning = (fixed: readonly Solid[]): Solid[] =>
  fixed.map((f) => ({ ...f, depth: flipped(f.depth), whole: flipped(f.whole) }));

const flipped = (depth: DepthRange | null): DepthRange | null =>
  depth && { fromMm: 0 - depth.toMm, toMm: 0 - depth.fromMm };

function rotatingMeasure(
  joint: Joint,
  part: Casting,
  against: 'moving' | 'fixed',
  pairs: readonly PairPassage[],
): RotatingMeasure {
  const measure = measureOf(pairs, joint.fit.clearance.rotatingMm);
  const { decisive, state, clearanceMm, toleranceMm } = measure;
  return {
    measure,
    result: {
      part: part.name,
      against,
      state,
      clearanceMm,
      toleranceMm,
      nearest: decisive && nearestOf(decisive),
      instant: decisive && instantOf(decisive, joint.fit.legs),
    },
  };
}
