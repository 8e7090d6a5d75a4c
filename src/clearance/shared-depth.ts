import type { DepthRange, Section } from '../job/casting.ts';
import type { Leg } from '../job/path.ts';
import { flushMm } from './tolerances.ts';

/** A closed part of a leg, as fractions of its way. */
export interface Fractions {
  readonly from: number;
  readonly to: number;
}

/** How near in depth two sections may pass before they count as sharing it, mm. */
export interface DepthRule {
  readonly marginMm: number;
  /** Whether ends at depth 0 are mating faces, which come together; what turns with the crank has none. */
  readonly facesMate: boolean;
}

/** Metal of a section over a range of depth; all that is needed of it to tell what shares depth with it. */
export interface Stretch {
  readonly depth: DepthRange;
  /** The depth of the whole section it is a part of: only its ends can be mating faces. */
  readonly whole: DepthRange;
  /** ± limit of the ends of the section, mm; an end on the mating face has none. */
  readonly depthErrorMm: number;
}

/** What is judged: the depths as measured, or with their errors at their worst. */
export type DepthView = 'as-measured' | 'at-worst';

const onFace = (mm: number): boolean => mm === 0;

/**
 * The depth that moving metal is judged over against fixed metal: lengthened by the margin at both ends, but not where
 * the two ends that face one another both lie on their own mating faces, so that mating flanges are no foul. At worst
 * the errors of both depths come on top, but for ends on a mating face.
 */
export function reachOf(moving: Stretch, fixed: Stretch, rule: DepthRule, view: DepthView): DepthRange {
  const errorMm = ({ depthErrorMm }: Stretch): number => (view === 'at-worst' ? depthErrorMm : 0);
  const byMm = (end: number, facing: number): number =>
    rule.facesMate && onFace(end) && onFace(facing)
      ? 0
      : rule.marginMm + (onFace(end) ? 0 : errorMm(moving)) + (onFace(facing) ? 0 : errorMm(fixed));
  const withinMm = rule.marginMm + errorMm(moving) + errorMm(fixed);
  const { whole, depth } = moving;
  // part of a section reaches no farther than the section itself
  return {
    fromMm: Math.max(whole.fromMm - byMm(whole.fromMm, fixed.whole.fromMm), depth.fromMm - withinMm),
    toMm: Math.min(whole.toMm + byMm(whole.toMm, fixed.whole.toMm), depth.toMm + withinMm),
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

/** Metal that may reach through every depth; then there is nothing to lengthen. */
export type MaybeStretch = Omit<Stretch, 'depth' | 'whole'> & {
  readonly depth: DepthRange | null;
  readonly whole: DepthRange | null;
};

export const stretchOf = ({ depth, whole = depth ?? undefined, depthErrorMm }: Section): MaybeStretch => ({
  depth,
  whole: whole ?? null,
  depthErrorMm,
});

export const isStretch = (metal: MaybeStretch): metal is Stretch => metal.depth !== null && metal.whole !== null;

/** The part of a leg during which moving metal shares depth with fixed metal, closed; null when it never does. */
export function meetingFractions(
  fixed: MaybeStretch,
  moving: MaybeStretch,
  leg: Pick<Leg, 'from' | 'to'>,
  rule: DepthRule,
  view: DepthView,
): Fractions | null {
  if (!isStretch(fixed) || !isStretch(moving)) return wholeLeg;
  return sharedFractions(fixed.depth, reachOf(moving, fixed, rule, view), leg);
}

export const wholeLeg: Fractions = { from: 0, to: 1 };

/** The part of a leg during which two ranges share depth, closed; null when they never do. */
export function sharedFractions(
  fixed: DepthRange,
  moving: DepthRange,
  leg: Pick<Leg, 'from' | 'to'>,
): Fractions | null {
  return fractionsWithin(sharedStandOffs(fixed, moving), leg);
}

/** The part of a leg, closed, on which its stand-off lies within an open range; null where it never does. */
export function fractionsWithin({ fromMm, toMm }: DepthRange, leg: Pick<Leg, 'from' | 'to'>): Fractions | null {
  const start = leg.from.standOffMm;
  const rise = leg.to.standOffMm - start;
  if (Math.abs(rise) <= flushMm) return start > fromMm + flushMm && start < toMm - flushMm ? wholeLeg : null;
  const a = (fromMm - start) / rise;
  const b = (toMm - start) / rise;
  const from = Math.max(0, Math.min(a, b));
  const to = Math.min(1, Math.max(a, b));
  return (to - from) * Math.abs(rise) > flushMm ? { from, to } : null;
}
