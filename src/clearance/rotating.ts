import { round6, roundUp6 } from '../geometry/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { Casting, DepthRange } from '../model/casting.ts';
import type { RotatingAnswer } from '../model/check-answer.ts';
import { type Measure, measureOf } from './measure.ts';
import { momentOf, witnessOf } from './moments.ts';
import { type PairPassage, pairAt, pairOnLeg, placeErrors } from './pairs.ts';
import { lengthened } from './shared-depth.ts';
import { type Solid, solidsSweptRound } from './solids.ts';

export interface RotatingMeasure {
  readonly answer: RotatingAnswer;
  readonly measure: Measure;
}

/**
 * A rotating part against the moving part (home and every leg) and against the fixed part. It is taken as the rings
 * it sweeps; instead of the depth margin the other part is lengthened by the rotating clearance.
 */
export function checkRotating(
  joint: Joint,
  part: Casting,
  fixed: readonly Solid[],
  moving: readonly Solid[],
): RotatingMeasure[] {
  const rings = solidsSweptRound(part);
  return [
    rotatingMeasure(joint, part, 'moving', againstMoving(joint, rings, moving)),
    rotatingMeasure(joint, part, 'fixed', againstFixed(joint, rings, fixed)),
  ];
}

function againstMoving(joint: Joint, rings: readonly Solid[], moving: readonly Solid[]): PairPassage[] {
  const { legs, clearance } = joint.fit;
  const place = placeErrors(joint);
  const pairs = rings.flatMap((ring) =>
    moving.flatMap((m) => [
      pairAt(ring, m, clearance.rotatingMm, place),
      ...legs.map((leg, i) => pairOnLeg(ring, m, leg, i + 1, clearance.rotatingMm, place)),
    ]),
  );
  return pairs.filter((pair) => pair !== null);
}

/** The fixed part stands still: told as a moving part at home, its depths turned to the moving side's sense. */
function againstFixed(joint: Joint, rings: readonly Solid[], fixed: readonly Solid[]): PairPassage[] {
  const pairs = rings.flatMap((ring) =>
    fixed.map((f) => pairAt(ring, { ...f, depth: flipped(f.depth) }, joint.fit.clearance.rotatingMm, [])),
  );
  return pairs.filter((pair) => pair !== null);
}

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
  const witness = decisive && witnessOf(decisive);
  const moment = decisive && momentOf(decisive, joint.fit.legs);
  return {
    measure,
    answer: {
      part: part.name,
      against,
      state,
      clearanceMm: clearanceMm === null ? null : round6(clearanceMm),
      toleranceMm: roundUp6(toleranceMm),
      leg: moment?.leg ?? null,
      nearest: witness && moment ? { ...witness, ...moment } : witness,
    },
  };
}

/** How near (mm) a rotating part runs to a mating face that the depth rule leaves out; null when it stays clear of it. */
export function nearFaceMm(part: Casting, rotatingMm: number): number | null {
  const gaps = part.sections.flatMap(({ depth }) => (depth && depth.toMm <= 0 ? [0 - depth.toMm] : []));
  const least = Math.min(...gaps);
  return least < rotatingMm && lengthened({ fromMm: 0, toMm: 1 }, rotatingMm).fromMm === 0 ? least : null;
}
