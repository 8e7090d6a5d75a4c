import type { HomeResult, WayInResult } from '../check-result.ts';
import { errorTermsMm } from './verify-claim.ts';
import { type Doubt, differing } from './verify-doubt.ts';
import { isNamed, type Meeting } from './verify-extrusions.ts';
import { roundingMm } from './verify-limits.ts';

/** The tracing error of the pair a result points out: its terms added straight, and by root sum of squares. */
export function errorDoubts(
  where: 'home' | 'install',
  { errorMm, errorRssMm, nearest }: HomeResult | WayInResult,
  meetings: readonly Meeting[],
  placeErrorsMm: readonly number[],
): Doubt[] {
  const meeting = nearest && meetings.find((m) => isNamed(m, nearest));
  const terms = meeting ? errorTermsMm(meeting, placeErrorsMm) : null;
  const straight = terms?.reduce((sum, e) => sum + e) ?? null;
  const bySquares = terms && Math.hypot(...terms);
  return [
    ...differing('error', where, 'Error of the nearest pair', errorMm, straight, roundingMm),
    ...differing('error', where, 'Its root sum of squares', errorRssMm, bySquares, roundingMm),
  ];
}
