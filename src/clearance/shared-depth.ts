import type { DepthRange } from '../model/casting.ts';
import type { Leg } from '../model/path.ts';

/** A closed part of a leg, as fractions of its way. */
export interface Fractions {
  readonly from: number;
  readonly to: number;
}

/** Ranges that overlap by less than this only meet end to end; far below anything a depth gauge can tell. */
const flushMm = 1e-9;

/**
 * The depth a section is judged over: lengthened by `marginMm` at both ends, but not at an end that lies on its own
 * mating face, so that mating flanges are no foul.
 */
export function lengthened(depth: DepthRange, marginMm: number): DepthRange {
  return {
    fromMm: depth.fromMm === 0 ? 0 : depth.fromMm - marginMm,
    toMm: depth.toMm === 0 ? 0 : depth.toMm + marginMm,
  };
}

/**
 * The stand-offs (open range, mm) at which a moving depth shares depth with a fixed one. Fixed metal stands at
 * z = −depth, moving metal at z = stand-off + depth.
 */
export const sharedStandOffs = (fixed: DepthRange, moving: DepthRange): DepthRange => ({
  fromMm: -fixed.toMm - moving.toMm,
  toMm: -fixed.fromMm - moving.fromMm,
});

/**
 * The part of a leg during which two sections share depth, closed; null when they never do. A section without depth
 * shares every depth.
 */
export function sharedFractions(
  fixed: DepthRange | null,
  moving: DepthRange | null,
  leg: Pick<Leg, 'from' | 'to'>,
  marginMm: number,
): Fractions | null {
  if (fixed === null || moving === null) return { from: 0, to: 1 };
  const shared = sharedStandOffs(fixed, lengthened(moving, marginMm));
  const start = leg.from.standOffMm;
  const rise = leg.to.standOffMm - start;
  if (Math.abs(rise) <= flushMm) {
    return start > shared.fromMm + flushMm && start < shared.toMm - flushMm ? { from: 0, to: 1 } : null;
  }
  const a = (shared.fromMm - start) / rise;
  const b = (shared.toMm - start) / rise;
  const from = Math.max(0, Math.min(a, b));
  const to = Math.min(1, Math.max(a, b));
  return (to - from) * Math.abs(rise) > flushMm ? { from, to } : null;
}
