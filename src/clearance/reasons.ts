import type { CheckAnswer, Warning } from '../answers/check-answer.ts';
import { lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import { depthReasons } from './depth-reasons.ts';
import { sizeReason } from './size-reason.ts';

/**
 * What tells, before anything is measured, that nothing will be or that it is not known how the way in begins; the
 * weightiest first. Each is a warning, and the reason not to judge unless the fit says that it is meant.
 */
export const reasonsBeforehand = (joint: Joint): Warning[] => [...sizeReason(joint), ...depthReasons(joint)];

/** Bolted castings that never come nearer than this were not laid where they belong, mm; common practice, no source. */
const nearMm = 25;

/** The least distances of a check, mm; null where no sections share depth. */
export interface LeastDistances {
  readonly home: Pick<CheckAnswer['home'], 'clearanceMm'>;
  readonly install: Pick<CheckAnswer['home'], 'clearanceMm'> | null;
}

/** Sections that share depth but never come near one another. */
export function farReason({ fit }: Joint, { home, install }: LeastDistances): Warning[] {
  const distances = [home.clearanceMm, install?.clearanceMm ?? null].filter((mm) => mm !== null);
  const leastMm = Math.min(...distances);
  if (distances.length === 0 || leastMm <= nearMm) return [];
  const dowels =
    fit.dowels.length < 2 ? 'fewer than two dowels are paired, so the parts may not lie where they belong' : 'the axis';
  const text = `No two sections ever come nearer than ${lengthText(leastMm, fit.units)}: castings that go together do. Look again at what lays them beside one another: ${dowels}, and whether one of the drawings is in inches.`;
  return [{ code: 'never-near', text }];
}

/** Why nothing is judged: what does not register never is, what was not measured is only where that is meant. */
export function reasonOf({ fit, refusal }: Joint, reasons: readonly Warning[]): string | null {
  if (refusal !== null) return refusal.code;
  return fit.nothingShares ? null : (reasons[0]?.code ?? null);
}

/** The joint taken as one to be judged by its figures alone, as what a cut leaves of it is: it was looked at before. */
export const judgedByFigures = (joint: Joint): Joint => ({
  ...joint,
  refusal: null,
  fit: { ...joint.fit, nothingShares: true },
});
