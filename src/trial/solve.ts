import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Vec } from '../geometry/plane/vec.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import type { Offered } from './contact.ts';
import { type Correction, correctionOf, type Unknowns } from './correction.ts';
import { type Equation, equationsOf, type Predicted, sdOfLimit, unknownsOf } from './equations.ts';
import { hypothesesOf, type Outcome, type Prior, type Row, weighed } from './hypotheses.ts';
import { type Moment, momentsOf } from './moments.ts';
import { deviateOfChiSquared, radiusHolding } from './spread.ts';
import type { Go, Trial } from './trial.ts';

/** How much larger a section is than it was traced, mm, ± limits of 95 %. */
export interface SectionOffset {
  readonly part: Part;
  readonly section: string;
  readonly offsetMm: number;
  readonly errorMm: number;
  /** How likely it is that this section was traced wrong, beyond its stated error; it may be one of a few that are named. */
  readonly wrong: number;
  readonly tracedWrong: boolean;
}

/** A reading, and what it is after all of them. */
export interface ExplainedReading {
  readonly id: string;
  readonly go: number;
  readonly measuredMm: number;
  readonly relation: Equation['relation'];
  readonly expectedMm: number;
  /** How likely it is that this reading is wrong; named where that is likelier than not. */
  readonly wrong: number;
  readonly disagrees: boolean;
}

/** What is known of the figures after the readings: x ~ N(values, covariance), in mm. */
export interface Posterior {
  readonly unknowns: Unknowns;
  readonly values: readonly number[];
  readonly covariance: Matrix;
  /** Of what outlines may wander by their stated errors, mean square. */
  readonly tracedWithin2: number;
  /** What is likeliest to be behind the readings, by itself. */
  readonly likeliest: Outcome;
}

/** The variance of what changes by so much with each unknown, mm². */
export const varianceAlong = ({ covariance }: Posterior, slopes: readonly number[]): number =>
  slopes.reduce((sum, a, i) => sum + slopes.reduce((of, b, j) => of + a * b * covariance.get(i, j), 0), 0);

/** Why nothing can be concluded, or what is wrong. */
export type Conclusion =
  /** The readings agree with one correction, within what tracing and reading can be. */
  | 'explained'
  /** They settle how it lies one way, and not the other. */
  | 'partly'
  /** They would agree with very different ones. */
  | 'too-little'
  /** Only a section that was traced wrong, beyond its error, explains them. */
  | 'traced-wrong'
  /** No correction with one thing wrong explains them. */
  | 'unexplained';

/** What the readings of all goes say together. */
export interface Explanation {
  readonly conclusion: Conclusion;
  /** How the moving outlines lie at home less how the fixed ones do: where they truly are against where the fit puts them. */
  readonly shift: Vec;
  readonly turnRad: number;
  /** ± limits of 95 %, of the shift whichever way it goes. */
  readonly shiftErrorMm: number;
  readonly turnErrorRad: number;
  readonly sections: readonly SectionOffset[];
  readonly readings: readonly ExplainedReading[];
  readonly correction: Correction;
  readonly posterior: Posterior;
}

/** How the fixed part stands at a go, with what has been cut so far. */
export type OfferedAs = (go: Go) => Offered;

/** How many readings settle three figures at the very least. */
const leastReadings = 3;

/** As much of what was not known before may be left, of standard deviation. */
const settledTo = 0.5;

/** Beyond this many standard deviations chance is no explanation: one in a thousand. */
const beyondChance = 3.09;

const mostSteps = 25;

const likelierThanNot = 0.5;

/** Of the likeliest: what is so likely to be wrong too is named beside it. */
const alikeShare = 0.2;

/**
 * The small shift and turn of the moving part, and the offset of each outline, that explain all readings best: the mean
 * over hypotheses by their evidence, after Gauss–Newton steps to where the likeliest one stays.
 */
export function explain(joint: Joint, trial: Trial, offeredAs: OfferedAs): Explanation {
  const leverMm = leverOf(joint);
  const moments = trial.goes.flatMap((go) => momentsOf(joint.fit.legs, go, leverMm));
  const unknowns = unknownsOf(joint, leverMm, moments);
  const equations = trial.goes.flatMap((go) => equationsOf(offeredAs(go), go, unknowns, moments));
  return explained(joint, unknowns, moments, equations);
}

function explained(
  joint: Joint,
  unknowns: Unknowns,
  moments: readonly Moment[],
  equations: readonly Equation[],
): Explanation {
  const prior = priorOf(joint, unknowns, moments);
  const suspectsIn = (rows: readonly SightedRow[]): number[] =>
    unknowns.list.flatMap((one, i) =>
      one.kind === 'offset' && rows.filter(({ row }) => row.slopes[i] !== 0).length >= 2 ? [i] : [],
    );
  let values: readonly number[] = unknowns.list.map(() => 0);
  let outcomes: Outcome[] = [];
  let rows: SightedRow[] = [];
  for (let step = 0; step < mostSteps; step++) {
    rows = rowsAt(joint, equations, values);
    outcomes = weighed(
      rows.map(({ row }) => row),
      values,
      prior,
      hypothesesOf(rows.length, suspectsIn(rows)),
    );
    const next = likeliest(outcomes).values;
    const movedMm = Math.max(...next.map((value, i) => Math.abs(value - (values[i] ?? 0))));
    values = next;
    if (movedMm < 1e-7) break;
  }
  return explanationOf(unknowns, prior, equations, rows, outcomes);
}

const likeliest = (outcomes: readonly Outcome[]): Outcome =>
  outcomes.reduce((best, one) => (one.probability > best.probability ? one : best));

interface SightedRow {
  readonly equation: Equation;
  readonly row: Row;
}

/** The readings about given figures; what only has to be no less, or no more, counts where it is not. */
function rowsAt(joint: Joint, equations: readonly Equation[], values: readonly number[]): SightedRow[] {
  return equations.flatMap((equation) => {
    const predicted = equation.predicted(values);
    if (predicted === null) return [];
    const residualMm = equation.measuredMm - predicted.gapMm;
    if (equation.relation === 'at-least' && residualMm <= 0) return [];
    if (equation.relation === 'at-most' && residualMm >= 0) return [];
    const row = {
      residualMm,
      slopes: predicted.slopes,
      readingMm2: equation.sdMm ** 2,
      wanderMm2: wanderMm2(joint, predicted),
    };
    return [{ equation, row }];
  });
}

/** A tracing error is half of one kind, half of the other: the outline as a whole is too large, and it wanders. */
const half = Math.SQRT1_2;

const limitOf = (joint: Joint, part: Part, section: string): number =>
  joint[part].sections.find(({ id }) => id === section)?.traceErrorMm ?? 0;

const wanderMm2 = (joint: Joint, { contact: { fixedSection, movingSection } }: Predicted): number =>
  (half * sdOfLimit(limitOf(joint, 'fixed', fixedSection))) ** 2 +
  (half * sdOfLimit(limitOf(joint, 'moving', movingSection))) ** 2;

const worstTrace = (joint: Joint, part: Part): number =>
  Math.max(0, ...joint[part].sections.map(({ traceErrorMm }) => traceErrorMm));

/** Without dowels nobody knows where the housing comes to lie, mm. */
const unpinnedMm = 5;

function priorOf(joint: Joint, { list }: Unknowns, moments: readonly Moment[]): Prior {
  const { dowelPlayMm, fitRmsMm, fit } = joint;
  const lieLimits = {
    fixed: worstTrace(joint, 'fixed'),
    moving: Math.hypot(
      worstTrace(joint, 'moving'),
      fit.dowels.length === 0 ? unpinnedMm : Math.hypot(dowelPlayMm, fitRmsMm),
    ),
  };
  const limits = list.map((one) => {
    if (one.kind === 'farther-on') return moments.find(({ key }) => key === one.moment)?.errorMm ?? 0;
    return one.kind === 'offset' ? limitOf(joint, one.part, one.section) : lieLimits[one.part];
  });
  return {
    sdMm: limits.map((limit, i) => sdOfLimit(limit) * (list[i]?.kind === 'offset' ? half : 1)),
    scaledBy: list.map(({ kind }) =>
      kind === 'offset' ? 'tracedWithin' : kind === 'farther-on' ? null : 'liesWithin',
    ),
    wrongOffsetMm: limits.map((limit) => Math.max(2 * limit, 1)),
  };
}

/** A turn is counted as what it moves this far from the crank: as far out as dowels stand, or metal does. */
function leverOf({ fit }: Joint): number {
  const reaches = fit.dowels.map(({ fixed }) => Math.hypot(fixed.at.x, fixed.at.y));
  return Math.max(50, ...reaches);
}

function explanationOf(
  unknowns: Unknowns,
  prior: Prior,
  equations: readonly Equation[],
  rows: readonly SightedRow[],
  outcomes: readonly Outcome[],
): Explanation {
  const values = unknowns.list.map((_, i) => meanOf(outcomes, ({ values: own }) => own[i] ?? 0));
  const covariance = mixedCovariance(outcomes, values);
  // how well one outline is traced says nothing of another, nor does a reading coarser than the tracing
  for (const [i, sdMm] of prior.sdMm.entries())
    if (
      prior.scaledBy[i] === 'tracedWithin' &&
      rows.every(({ row }) => row.slopes[i] === 0 || row.readingMm2 > sdMm ** 2)
    )
      covariance.set(i, i, Math.max(covariance.get(i, i), sdMm ** 2));
  const correction = correctionOf(unknowns, values);
  const sdOf = (i: number): number => Math.sqrt(covariance.get(i, i));
  const between = betweenParts(covariance);
  const inPlane = new EigenvalueDecomposition(between.subMatrix(0, 1, 0, 1)).realEigenvalues as [number, number];
  const [dx = 0, dy = 0, turnMm = 0] = [0, 1, 2].map((i) => (values[i] ?? 0) - (values[i + 3] ?? 0));
  const wrongness = (is: (wrong: NonNullable<Outcome['hypothesis']['wrong']>) => boolean): number =>
    outcomes.reduce(
      (sum, { hypothesis: { wrong }, probability }) => sum + (wrong !== null && is(wrong) ? probability : 0),
      0,
    );
  const wrongOf = (i: number): number => wrongness((wrong) => 'unknown' in wrong && wrong.unknown === i);
  // what meets only one another cannot be told apart: then both are named
  const suspicions = unknowns.list.map((_, i) => wrongOf(i));
  const oneIsWrong = suspicions.reduce((sum, one) => sum + one, 0) > likelierThanNot;
  const isSuspect = (wrong: number): boolean => oneIsWrong && wrong >= alikeShare * Math.max(...suspicions);
  const sections = unknowns.list.flatMap((one, i) =>
    one.kind === 'offset'
      ? [
          {
            part: one.part,
            section: one.section,
            offsetMm: values[i] ?? 0,
            errorMm: 1.96 * sdOf(i),
            wrong: wrongOf(i),
            tracedWrong: isSuspect(wrongOf(i)),
          },
        ]
      : [],
  );
  // what nothing explains is held against the drawings
  const asDrawn = unknowns.list.map(() => 0);
  const agreed = conclusionOf(rows, likeliest(outcomes), prior);
  const isTracedWrong = sections.some(({ tracedWrong }) => tracedWrong);
  return {
    conclusion: isTracedWrong && (agreed === 'explained' || agreed === 'partly') ? 'traced-wrong' : agreed,
    shift: vec(dx, dy),
    turnRad: turnMm / unknowns.leverMm,
    shiftErrorMm: radiusHolding(0.95, Math.max(0, inPlane[0]), Math.max(0, inPlane[1])),
    turnErrorRad: (1.96 * Math.sqrt(between.get(2, 2))) / unknowns.leverMm,
    sections,
    readings: equations.flatMap((equation) => {
      const predicted = equation.predicted(agreed === 'unexplained' ? asDrawn : values);
      if (predicted === null) return [];
      const row = rows.findIndex((one) => one.equation === equation);
      const { id, go, measuredMm, relation } = equation;
      const wrong = row < 0 ? 0 : wrongness((one) => 'row' in one && one.row === row);
      return [{ id, go, measuredMm, relation, expectedMm: predicted.gapMm, wrong, disagrees: wrong > likelierThanNot }];
    }),
    correction,
    posterior: {
      unknowns,
      values,
      covariance,
      tracedWithin2: meanOf(outcomes, ({ hypothesis }) => hypothesis.tracedWithin ** 2),
      likeliest: likeliest(outcomes),
    },
  };
}

/** Of how the moving outlines lie less how the fixed ones do: x, y and turn of the one come first, then of the other. */
function betweenParts(covariance: Matrix): Matrix {
  const of = (i: number, j: number): number => covariance.get(i, j);
  return new Matrix(
    [0, 1, 2].map((i) => [0, 1, 2].map((j) => of(i, j) - of(i, j + 3) - of(i + 3, j) + of(i + 3, j + 3))),
  );
}

const meanOf = (outcomes: readonly Outcome[], of: (outcome: Outcome) => number): number =>
  outcomes.reduce((sum, outcome) => sum + outcome.probability * of(outcome), 0);

/** Of a mixture: what each varies by, and what their means do. */
function mixedCovariance(outcomes: readonly Outcome[], mean: readonly number[]): Matrix {
  const all = Matrix.zeros(mean.length, mean.length);
  for (const { probability, values, covariance } of outcomes) {
    if (probability < 1e-12) continue;
    const off = Matrix.columnVector(values.map((value, i) => value - (mean[i] ?? 0)));
    all.add(Matrix.mul(Matrix.add(covariance, off.mmul(off.transpose())), probability));
  }
  return all;
}

function conclusionOf(rows: readonly SightedRow[], best: Outcome, prior: Prior): Conclusion {
  const measured = rows.filter(({ equation }) => equation.relation === 'equal').length;
  if (measured < leastReadings) return 'too-little';
  if (deviateOfChiSquared(best.chiSquared, rows.length) > beyondChance) return 'unexplained';
  // a matter of where readings were taken, as if they were of outlines without any error
  const exact = weighed(
    rows.map(({ row }) => ({ ...row, wanderMm2: 0 })),
    prior.sdMm.map(() => 0),
    { ...prior, sdMm: prior.sdMm.map((sdMm, i) => (prior.scaledBy[i] === 'tracedWithin' ? 0 : sdMm)) },
    [{ tracedWithin: 1, liesWithin: 1, wrong: null, odds: 1 }],
  )[0];
  const left = exact === undefined ? null : betweenParts(exact.covariance);
  const before = betweenParts(Matrix.diag(prior.sdMm.map((sdMm) => sdMm ** 2)));
  if (left === null) return 'too-little';
  // as much was known of it any way, so the ways that are known best and worst now are those of what is left
  const ways = new EigenvalueDecomposition(left.subMatrix(0, 1, 0, 1)).realEigenvalues;
  const settled = ways.filter((mm2) => mm2 <= settledTo ** 2 * before.get(0, 0)).length;
  return settled === 2 ? 'explained' : settled === 1 ? 'partly' : 'too-little';
}
