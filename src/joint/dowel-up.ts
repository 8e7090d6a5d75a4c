import { identity, type Rigid, rigid } from '../geometry/plane/rigid.ts';
import { type PointPair, type RigidFit, rigidFit } from '../geometry/plane/rigid-fit.ts';
import { distance, sub, type Vec } from '../geometry/plane/vec.ts';
import type { HolePair } from '../job/job.ts';
import type { JointNotice, PairNames } from './notices.ts';
import { halfTurnSlackRad, spacingHairMm } from './tolerances.ts';

/** How the moving drawing is carried home by the dowels. */
export interface DowelUp {
  /** In (−π, π], anticlockwise. */
  readonly turnRad: number;
  /** Where the origin of the moving drawing comes to lie, mm. */
  readonly shift: Vec;
  /** Root mean square of the offsets, mm; null where nothing is paired. */
  readonly rmsMm: number | null;
  /** Moving less fixed spacing of the two dowels that differ most, mm; null for fewer than two. */
  readonly spacingErrorMm: number | null;
  readonly pairs: readonly (PairNames & { readonly offsetMm: number })[];
}

export const pointPair = ({ fixed, moving }: HolePair): PointPair => ({ from: moving.at, to: fixed.at });

/**
 * Carries the moving drawing home on its paired dowels, the fixed holes being in the joint frame (mm). No pair:
 * the drawing's own origin on the axis, up is up; one: shift only; more: the least-squares rigid fit.
 */
export function dowelUp(pairs: readonly HolePair[]): DowelUp & { readonly motion: Rigid } {
  const { motion, offsetsMm, rmsMm } = bestFit(pairs.map(pointPair));
  return {
    motion,
    turnRad: halfOpenTurnRad(motion.turnRad),
    shift: motion.shift,
    rmsMm: pairs.length === 0 ? null : rmsMm,
    spacingErrorMm: spacingError(pairs),
    pairs: pairs.map(({ fixed, moving }, i) => ({
      fixed: fixed.id,
      moving: moving.id,
      offsetMm: offsetsMm[i] as number,
    })),
  };
}

/** Carries moving holes onto fixed ones: none, as they stand; one, shift only; more, by least squares. */
export function bestFit(pairs: readonly PointPair[]): RigidFit {
  const [first, second] = pairs;
  if (first === undefined) return { motion: identity, offsetsMm: [], rmsMm: 0 };
  if (second === undefined) return { motion: rigid(0, sub(first.to, first.from)), offsetsMm: [0], rmsMm: 0 };
  return rigidFit(pairs);
}

/** A half turn is told as a positive one, on whichever side of it rounding falls. */
const halfOpenTurnRad = (turnRad: number): number =>
  turnRad <= halfTurnSlackRad - Math.PI ? turnRad + 2 * Math.PI : turnRad;

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

export function dowelNotices({ pairs, spacingErrorMm }: DowelUp): JointNotice[] {
  const [only] = pairs;
  if (only && pairs.length === 1) return [{ code: 'one-dowel-pair', fixed: only.fixed, moving: only.moving }];
  if (spacingErrorMm === null) return [];
  const isBeyond = (limitMm: number): boolean => Math.abs(spacingErrorMm) > limitMm + spacingHairMm;
  if (!isBeyond(spacingWarnMm)) return [];
  return [{ code: isBeyond(measureAgainMm) ? 'dowel-spacing-measure-again' : 'dowel-spacing', spacingErrorMm }];
}
