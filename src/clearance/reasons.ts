import type { Joint } from '../joint/joint.ts';
import type { HomeResult } from './check-result.ts';
import { depthReasons } from './depth-reasons.ts';
import type { ReasonCode, ReasonNotice } from './notices.ts';
import { sizeReason } from './size-reason.ts';

/**
 * What tells, before anything is measured, that nothing will be or that it is not known how the way in begins; the
 * weightiest first. Each is a notice, and the reason not to judge unless the fit says that it is meant.
 */
export const reasonsBeforehand = (joint: Joint): ReasonNotice[] => [...sizeReason(joint), ...depthReasons(joint)];

/** Bolted castings that never come nearer than this were not laid where they belong, mm; common practice, no source. */
const nearMm = 25;

/** The least distances of a check, mm; null where no sections share depth. */
export interface LeastDistances {
  readonly home: Pick<HomeResult, 'clearanceMm'>;
  readonly wayIn: Pick<HomeResult, 'clearanceMm'> | null;
}

/** Sections that share depth but never come near one another. */
export function farReason({ fit }: Joint, { home, wayIn }: LeastDistances): ReasonNotice[] {
  const distances = [home.clearanceMm, wayIn?.clearanceMm ?? null].filter((mm) => mm !== null);
  const leastMm = Math.min(...distances);
  if (distances.length === 0 || leastMm <= nearMm) return [];
  return [{ code: 'never-near', leastMm, fewDowels: fit.dowels.length < 2 }];
}

/** Why nothing is judged: what does not register never is, what was not measured is only where that is meant. */
export function reasonOf({ fit, refusal }: Joint, reasons: readonly ReasonNotice[]): ReasonCode | null {
  if (refusal !== null) return refusal.code;
  return fit.nothingShares ? null : (reasons[0]?.code ?? null);
}

/** The joint taken as one to be judged by its figures alone, as what a cut leaves of it is: it was looked at before. */
export const judgedByFigures = (joint: Joint): Joint => ({
  ...joint,
  refusal: null,
  fit: { ...joint.fit, nothingShares: true },
});
