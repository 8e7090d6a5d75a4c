import type { PlaneFit } from './fit-plane.ts';
import { stretchAt } from './homography.ts';
import type { KnownPoint } from './known-point.ts';
import type { PhotoFault } from './photo-fault.ts';
import { outOfRange } from './ranges.ts';

/** How well the points were touched and are known: ± limits in each direction, held 95 times in a hundred. */
export interface StatedErrors {
  readonly touchErrorPx: number;
  readonly knownErrorMm: number;
}

/** By common practice: the middle of a hole touched in an enlarged picture; calipers between holes. */
export const usualErrors: StatedErrors = { touchErrorPx: 2, knownErrorMm: 0.15 };

export const statedFaults = ({ touchErrorPx, knownErrorMm }: StatedErrors): readonly PhotoFault[] => [
  ...outOfRange({ touchErrorPx }, 'above 0'),
  ...outOfRange({ knownErrorMm }, 'from 0'),
];

/** The scatter of touches that errors are reckoned with. */
export interface TouchNoise {
  /** Standard deviation in each direction, px. */
  readonly sigmaPx: number;
  /** `residuals` where the points disagree by more than was stated. With four points there are none: `stated`. */
  readonly from: 'stated' | 'residuals';
  /** How many free measurements `sigmaPx` is worth; what was stated counts as `statedFreedom` of them. */
  readonly degreesOfFreedom: number;
}

/** What was stated is held to be known as well as the scatter of eight points touched would tell it. */
const statedFreedom = 16;

/** A normal distribution's 95 % limit, in standard deviations. */
const limitSigmas = 1.96;

/** The variance of a touch in one direction as stated, px²; the known places' own error is a scatter like any other. */
export function statedVariancePx2(
  fit: PlaneFit,
  points: readonly KnownPoint[],
  { touchErrorPx, knownErrorMm }: StatedErrors,
): number {
  const areas = points.map(({ at }) => {
    const [a, b, c, d] = stretchAt(fit.toPicture, at);
    return Math.abs(a * d - b * c);
  });
  const areaPx2 = areas.reduce((sum, area) => sum + area, 0) / areas.length;
  return (touchErrorPx ** 2 + areaPx2 * knownErrorMm ** 2) / limitSigmas ** 2;
}

/**
 * What was stated and what the residuals show, weighed by their degrees of freedom (the pooled variance); but never
 * less than the residuals show by themselves.
 */
export function touchNoise({ sumOfSquaresPx2, degreesOfFreedom: free }: PlaneFit, statedPx2: number): TouchNoise {
  const pooledPx2 = (statedFreedom * statedPx2 + sumOfSquaresPx2) / (statedFreedom + free);
  const shownPx2 = free > 0 ? sumOfSquaresPx2 / free : 0;
  return {
    sigmaPx: Math.sqrt(Math.max(pooledPx2, shownPx2)),
    from: shownPx2 > statedPx2 ? 'residuals' : 'stated',
    degreesOfFreedom: statedFreedom + free,
  };
}

/** Rarer than once in a thousand, by touching alone, a sum of squares is called a disagreement. */
const rareChance = 1e-3;

/** Whether the points scatter no more than was stated, by the χ² distribution of their sum of squares. */
export const pointsAgree = ({ sumOfSquaresPx2, degreesOfFreedom }: PlaneFit, statedPx2: number): boolean =>
  chanceBeyond(sumOfSquaresPx2 / statedPx2, degreesOfFreedom) >= rareChance;

/** The chance of a χ² beyond `value`; in closed form, since points bring two degrees of freedom each. */
function chanceBeyond(value: number, evenDegreesOfFreedom: number): number {
  let term = Math.exp(-value / 2);
  let sum = evenDegreesOfFreedom === 0 ? 1 : term;
  for (let k = 1; k < evenDegreesOfFreedom / 2; k += 1) {
    term *= value / 2 / k;
    sum += term;
  }
  return sum;
}
