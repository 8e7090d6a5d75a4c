import { describe, expect, it } from 'vitest';
import { type Hypothesis, type Row, weighed } from '../../../src/trial/hypotheses.ts';

const prior = { sdMm: [0.4, 0.3], scaledBy: ['liesWithin', 'tracedWithin'] as const, wrongOffsetMm: [0, 1.2] };
const row = (residualMm: number, slopes: number[], wanderMm2 = 0.02): Row => ({
  residualMm,
  slopes,
  readingMm2: 0.01,
  wanderMm2,
});
const rows = [row(0.5, [1, -1]), row(-0.1, [-0.6, -1]), row(0.9, [0.3, -1], 0.05), row(0.2, [0.8, 0])];

/** The same by adding up a fine grid of both unknowns, with nothing but the densities of the normal distribution. */
function byGrid({ tracedWithin, liesWithin, wrong, odds }: Hypothesis) {
  const density = (x: number, variance: number): number =>
    Math.exp(-(x ** 2) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  const variances = prior.sdMm.map(
    (sd, i) =>
      (sd * (prior.scaledBy[i] === 'tracedWithin' ? tracedWithin : liesWithin)) ** 2 +
      (wrong !== null && 'unknown' in wrong && wrong.unknown === i ? (prior.wrongOffsetMm[i] ?? 0) ** 2 : 0) +
      1e-6,
  );
  const step = 0.01;
  let [sum, x, y, xx] = [0, 0, 0, 0];
  for (let a = -3; a <= 3; a += step) {
    for (let b = -5; b <= 5; b += step) {
      let weight = density(a, variances[0] ?? 0) * density(b, variances[1] ?? 0);
      rows.forEach(({ residualMm, slopes: [p = 0, q = 0], readingMm2, wanderMm2 }, k) => {
        const isWrong = wrong !== null && 'row' in wrong && wrong.row === k;
        weight *= density(residualMm - p * a - q * b, readingMm2 + tracedWithin ** 2 * wanderMm2 + (isWrong ? 9 : 0));
      });
      sum += weight;
      x += weight * a;
      y += weight * b;
      xx += weight * a * a;
    }
  }
  return { evidence: odds * sum * step * step, mean: [x / sum, y / sum], varianceOfFirst: xx / sum - (x / sum) ** 2 };
}

describe('what hypotheses make of readings', () => {
  const hypotheses: Hypothesis[] = [
    { tracedWithin: 1, liesWithin: 1, wrong: null, odds: 1 },
    { tracedWithin: 0.5, liesWithin: 0.6, wrong: null, odds: 0.5 },
    { tracedWithin: 1, liesWithin: 1, wrong: { unknown: 1 }, odds: 0.05 },
    { tracedWithin: 1, liesWithin: 1, wrong: { row: 2 }, odds: 0.05 },
  ];

  it('is what a fine grid of all values adds up to: means, spreads, and how likely each is', () => {
    const grids = hypotheses.map(byGrid);
    const all = grids.reduce((sum, { evidence }) => sum + evidence, 0);
    weighed(rows, [0, 0], prior, hypotheses).forEach(({ probability, values, covariance }, i) => {
      const { evidence, mean, varianceOfFirst } = grids[i] as (typeof grids)[number];
      // the grid is good to its step squared
      expect(probability).toBeCloseTo(evidence / all, 3);
      expect(values[0]).toBeCloseTo(mean[0] ?? 0, 3);
      expect(values[1]).toBeCloseTo(mean[1] ?? 0, 3);
      expect(covariance.get(0, 0)).toBeCloseTo(varianceOfFirst, 3);
    });
  });

  it('is the same about whatever point the readings are told', () => {
    const about = [0.3, -0.2];
    const told = rows.map((one) => ({
      ...one,
      residualMm: one.residualMm - one.slopes.reduce((sum, slope, i) => sum + slope * (about[i] ?? 0), 0),
    }));
    const [here, there] = [weighed(rows, [0, 0], prior, hypotheses), weighed(told, about, prior, hypotheses)];
    here.forEach(({ values, probability }, i) => {
      expect(there[i]?.probability).toBeCloseTo(probability, 12);
      for (const [k, value] of values.entries()) expect(there[i]?.values[k]).toBeCloseTo(value, 12);
    });
  });
});
