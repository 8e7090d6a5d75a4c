import type { HolePair } from '../job/job.ts';

/**
 * Half the largest clearance (hole − pin, mm) over the pairs that state both diameters; the pin is the one that
 * stands proud. An interference fit has no play.
 */
export const dowelPlayMm = (pairs: readonly HolePair[]): number =>
  pairs.reduce((most, pair) => Math.max(most, (dowelClearanceMm(pair) ?? 0) / 2), 0);

function dowelClearanceMm({ fixed, moving }: HolePair): number | null {
  if (fixed.diameterMm === null || moving.diameterMm === null) return null;
  const movingOverFixed = moving.diameterMm - fixed.diameterMm;
  if (fixed.proudMm > 0 && moving.proudMm <= 0) return movingOverFixed;
  if (moving.proudMm > 0 && fixed.proudMm <= 0) return -movingOverFixed;
  return Math.abs(movingOverFixed);
}
