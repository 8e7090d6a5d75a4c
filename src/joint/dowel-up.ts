import type { DowelUpAnswer, Warning } from '../answers/check-answer.ts';
import { identity, type Rigid, rigid } from '../geometry/plane/rigid.ts';
import { type PointPair, type RigidFit, rigidFit } from '../geometry/plane/rigid-fit.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import { distance, sub } from '../geometry/plane/vec.ts';
import type { HolePair } from '../job/job.ts';
import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import { jointWarning } from './warnings.ts';

/** How the moving drawing is carried home by the dowels. */
export interface DowelUp {
  readonly motion: Rigid;
  readonly rmsMm: number;
  readonly answer: Omit<DowelUpAnswer, 'hand'>;
  readonly warnings: readonly Warning[];
}

export const pointPair = ({ fixed, moving }: HolePair): PointPair => ({ from: moving.at, to: fixed.at });

/**
 * Carries the moving drawing home on its paired dowels, the fixed holes being in the joint frame (mm). No pair:
 * the drawing's own origin on the axis, up is up; one: shift only; more: the least-squares rigid fit.
 */
export function dowelUp(pairs: readonly HolePair[], units: Units): DowelUp {
  const { motion, offsetsMm, rmsMm } = bestFit(pairs.map(pointPair));
  const spacingErrorMm = spacingError(pairs);
  const answer = {
    turnDeg: halfOpenTurnDeg(motion.turnRad),
    shiftMm: roundPoint6(motion.shift),
    rmsMm: pairs.length === 0 ? null : round6(rmsMm),
    spacingErrorMm: spacingErrorMm === null ? null : round6(spacingErrorMm),
    pairs: pairs.map(({ fixed, moving }, i) => ({
      fixed: fixed.id,
      moving: moving.id,
      offsetMm: round6(offsetsMm[i] as number),
    })),
  };
  return { motion, rmsMm, answer, warnings: dowelWarnings(answer, units) };
}

/** Carries moving holes onto fixed ones: none, as they stand; one, shift only; more, by least squares. */
export function bestFit(pairs: readonly PointPair[]): RigidFit {
  const [first, second] = pairs;
  if (first === undefined) return { motion: identity, offsetsMm: [], rmsMm: 0 };
  if (second === undefined) return { motion: rigid(0, sub(first.to, first.from)), offsetsMm: [0], rmsMm: 0 };
  return rigidFit(pairs);
}

/** Degrees in (−180, 180]. */
function halfOpenTurnDeg(turnRad: number): number {
  const deg = round6((turnRad * 180) / Math.PI);
  return deg <= -180 ? deg + 360 : deg;
}

/** Moving − fixed distance between the two dowels where that difference is largest, mm; null for fewer than two. */
function spacingError(pairs: readonly HolePair[]): number | null {
  const differences = pairs.flatMap((a, i) =>
    pairs.slice(i + 1).map((b) => distance(a.moving.at, b.moving.at) - distance(a.fixed.at, b.fixed.at)),
  );
  return differences.reduce<number | null>(
    (worst, d) => (worst === null || Math.abs(d) > Math.abs(worst) ? d : worst),
    null,
  );
}

// limits of dowel-spacing error, mm: common practice, no source
const spacingWarnMm = 0.3;
const measureAgainMm = 0.5;

function dowelWarnings({ pairs, spacingErrorMm }: DowelUp['answer'], units: Units): Warning[] {
  const [only] = pairs;
  if (only && pairs.length === 1) {
    const text = `Only one dowel pair (${only.fixed} on ${only.moving}): the moving part is shifted onto it, its turn is taken as drawn. Pair a second dowel.`;
    return [jointWarning('one-dowel-pair', text)];
  }
  const apartMm = Math.abs(spacingErrorMm ?? 0);
  if (apartMm <= spacingWarnMm) return [];
  const way = (spacingErrorMm ?? 0) > 0 ? 'further apart' : 'closer together';
  const text = `The dowels stand ${givenLength(apartMm, units)} ${way} in the moving part than in the fixed part`;
  return [
    apartMm > measureAgainMm
      ? jointWarning('dowel-spacing-measure-again', `${text}: measure both again before you trust any clearance.`)
      : jointWarning('dowel-spacing', `${text}; the fit shares that out between them.`),
  ];
}
