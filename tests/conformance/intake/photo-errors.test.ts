import { describe, expect, it } from 'vitest';
import { errorCoverage } from '../../support/photo-errors.ts';
import { sixHoles } from '../../support/plate.ts';

/*
 * The stated error is a 95 % limit at each place, from the covariance of the fit and the quantiles of F, none of it
 * tuned. By theory it is √F(2, 20) × (1 to 1.13) = 1.87 to 2.12 times the rms of the true error, a little more where
 * the residuals happen to be large: a limit that took the largest error over the whole plate into account would be
 * 2.8 times it, and would charge every place with the worst one's.
 */
describe('the error stated of a picture set by six points', () => {
  it('covers 92 to 99 of a hundred true ones in 200 views, and is at most 2.5 times their rms', () => {
    const { settingMm, traceMm } = errorCoverage({ holes: sixHoles, views: 200, firstSeed: 1, sigmaPx: 1 });
    for (const { covered, meanOverRms } of [settingMm, traceMm]) {
      expect(covered).toBeGreaterThanOrEqual(0.92);
      expect(covered).toBeLessThanOrEqual(0.99);
      expect(meanOverRms).toBeLessThanOrEqual(2.5);
    }
  });
});
