import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** One reading about the figures at hand: measured = predicted + slopes · (x − x₀) + error; lengths in mm. */
export interface Row {
  readonly residualMm: number;
  readonly slopes: readonly number[];
  /** Variance of the reading by itself, and of how the outlines it is of wander, where they are traced at their worst. */
  readonly readingMm2: number;
  readonly wanderMm2: number;
}

/** What may be behind the readings: how well the outlines are traced, and at most one thing that is wrong. */
export interface Hypothesis {
  /** Of what tracing errors are stated to be at most: in how large outlines are and how they wander, and in how they lie. */
  readonly tracedWithin: number;
  readonly liesWithin: number;
  readonly wrong: { readonly unknown: number } | { readonly row: number } | null;
  readonly odds: number;
}

export interface Outcome {
  readonly hypothesis: Hypothesis;
  /** Of all hypotheses; they sum up to 1. */
  readonly probability: number;
  readonly values: readonly number[];
  readonly covariance: Matrix;
  /** Of the readings, against what they could be before anything was read: as far as chance goes, with as many degrees of freedom as rows. */
  readonly chiSquared: number;
}

/** Before anything is read: standard deviations of the unknowns, by what of a hypothesis each is scaled, and how far off what is wrong may be. */
export interface Prior {
  readonly sdMm: readonly number[];
  readonly scaledBy: readonly (keyof Pick<Hypothesis, 'tracedWithin' | 'liesWithin'> | null)[];
  readonly wrongOffsetMm: readonly number[];
}

/** A reading that is wrong may be wrong by this, mm. */
const wrongReadingMm = 3;

/** Stated errors are mostly what they are; one time in four it was done much better than was promised. Common practice, no source. */
const asStated = { within: 1, odds: 3 / 4 };
const tracings = [{ within: 0.25, odds: 1 / 4 }, asStated].flatMap((traced) =>
  [{ within: 0.5, odds: 1 / 4 }, asStated].map((lies) => ({
    tracedWithin: traced.within,
    liesWithin: lies.within,
    odds: traced.odds * lies.odds,
  })),
);

/** One section in twenty is traced wrong, and one reading is; common practice, no source. */
const wrongSectionOdds = 1 / 20;
const wrongReadingOdds = 1 / 20;

export function hypothesesOf(rows: number, suspects: readonly number[]): Hypothesis[] {
  return tracings.flatMap(({ odds, ...traced }): Hypothesis[] => [
    { ...traced, wrong: null, odds },
    ...suspects.map((unknown) => ({ ...traced, wrong: { unknown }, odds: odds * wrongSectionOdds })),
    ...Array.from({ length: rows }, (_, row) => ({ ...traced, wrong: { row }, odds: odds * wrongReadingOdds })),
  ]);
}

/**
 * What every hypothesis makes of the readings about x₀, and how likely each is by its evidence. All are Gaussian, with
 * x ~ N(0, D) and errors N(0, R): the posterior is N(Λ⁻¹b, Λ⁻¹) with Λ = D⁻¹ + JᵀR⁻¹J and b = JᵀR⁻¹y, and
 * −2 log evidence = log|R| + log|D| + log|Λ| + yᵀR⁻¹y − bᵀΛ⁻¹b (Bishop, Pattern Recognition and Machine Learning, 3.5; from
 * memory). One thing wrong at most is the variance-inflation model of outliers of Box and Tiao (1968; from memory).
 */
export function weighed(
  rows: readonly Row[],
  about: readonly number[],
  prior: Prior,
  hypotheses: readonly Hypothesis[],
): Outcome[] {
  const outcomes = hypotheses.map((hypothesis) => outcomeOf(rows, about, prior, hypothesis));
  const best = Math.max(...outcomes.map(({ logEvidence }) => logEvidence));
  const weights = outcomes.map(({ logEvidence }) => Math.exp(logEvidence - best));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return outcomes.map(({ logEvidence: _log, ...outcome }, i) => ({ ...outcome, probability: (weights[i] ?? 0) / all }));
}

function outcomeOf(rows: readonly Row[], about: readonly number[], prior: Prior, hypothesis: Hypothesis) {
  const { tracedWithin: within, wrong, odds } = hypothesis;
  const n = about.length;
  const precision = Matrix.zeros(n, n);
  const b = Matrix.zeros(n, 1);
  let log = -2 * Math.log(odds);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const variance = priorVariance(prior, i, hypothesis);
    precision.set(i, i, 1 / variance);
    log += Math.log(variance);
  }
  rows.forEach(({ residualMm, slopes, readingMm2, wanderMm2 }, k) => {
    const isWrong = wrong !== null && 'row' in wrong && wrong.row === k;
    const variance = readingMm2 + within ** 2 * wanderMm2 + (isWrong ? wrongReadingMm ** 2 : 0);
    const y = residualMm + slopes.reduce((of, slope, i) => of + slope * (about[i] ?? 0), 0);
    log += Math.log(variance);
    sum += y ** 2 / variance;
    slopes.forEach((slope, i) => {
      if (slope === 0) return;
      b.set(i, 0, b.get(i, 0) + (slope * y) / variance);
      for (const [j, other] of slopes.entries()) precision.set(i, j, precision.get(i, j) + (slope * other) / variance);
    });
  });
  const cholesky = new CholeskyDecomposition(precision);
  const mean = cholesky.solve(b);
  const chiSquared = sum - b.transpose().mmul(mean).get(0, 0);
  const logDet = 2 * cholesky.lowerTriangularMatrix.diagonal().reduce((of, d) => of + Math.log(d), 0);
  return {
    hypothesis,
    values: mean.getColumn(0),
    covariance: cholesky.solve(Matrix.eye(n)),
    chiSquared,
    logEvidence: -0.5 * (log + logDet + chiSquared),
  };
}

function priorVariance(prior: Prior, i: number, hypothesis: Hypothesis): number {
  const { wrong } = hypothesis;
  const scaledBy = prior.scaledBy[i] ?? null;
  const sdMm = (prior.sdMm[i] ?? 0) * (scaledBy === null ? 1 : hypothesis[scaledBy]);
  const wrongMm = wrong !== null && 'unknown' in wrong && wrong.unknown === i ? (prior.wrongOffsetMm[i] ?? 0) : 0;
  return sdMm ** 2 + wrongMm ** 2 + leastSdMm ** 2;
}

/** What an outline that was traced without any error would still err by, mm. */
const leastSdMm = 1e-3;
