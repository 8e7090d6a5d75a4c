import { still } from '../geometry/motion/motion.ts';
import type { Section } from '../job/casting.ts';
import { home, type Leg, type Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import {
  type DepthRule,
  type DepthView,
  type Fractions,
  type MaybeStretch,
  meetingFractions,
  stretchOf,
} from './shared-depth.ts';

/** A leg of the way in, counted from 1, or, where `count` is null, one on which the moving part only stands. */
export interface Way {
  readonly leg: Leg;
  readonly count: number | null;
}

export interface CountedWay extends Way {
  readonly count: number;
}

export const standingAt = (position: Position): Way => ({
  leg: { from: position, to: position, motion: still },
  count: null,
});

export const atHome: Way = standingAt(home);

export const waysOf = (legs: readonly Leg[]): CountedWay[] => legs.map((leg, i) => ({ leg, count: i + 1 }));

/** What passes one another: metal that stands still, and metal that moves. */
export interface Sides<F, M = F> {
  readonly fixed: readonly F[];
  readonly moving: readonly M[];
}

/** One of each side, on one way. */
export interface Passing<F, M = F> extends Way {
  readonly fixed: F;
  readonly moving: M;
}

/** Every two on every way: way by way as they are gone, the fixed ones in order, and past each the moving ones. */
export function* passings<F, M>({ fixed, moving }: Sides<F, M>, ways: readonly Way[]): Generator<Passing<F, M>> {
  for (const way of ways) for (const f of fixed) for (const m of moving) yield { ...way, fixed: f, moving: m };
}

/** The part of a way during which two share depth. */
export interface Meeting<F, M = F> extends Passing<F, M> {
  readonly fractions: Fractions;
}

/** The passings on which the two share depth, in their order. */
export function* meetings<F extends MaybeStretch, M extends MaybeStretch>(
  sides: Sides<F, M>,
  ways: readonly Way[],
  rule: DepthRule,
  view: DepthView,
): Generator<Meeting<F, M>> {
  for (const passing of passings(sides, ways)) {
    const fractions = meetingFractions(passing.fixed, passing.moving, passing.leg, rule, view);
    if (fractions !== null) yield { ...passing, fractions };
  }
}

/** A section as metal over its depth. */
export type SectionMetal = MaybeStretch & { readonly section: Section };

export const metalOf = (section: Section): SectionMetal => ({ section, ...stretchOf(section) });

/** What sections of the two parts are judged by, which mate at depth 0. */
export const matingRule = ({ fit }: Pick<Joint, 'fit'>): DepthRule => ({
  marginMm: fit.depthMarginMm,
  facesMate: true,
});

/** The passings on which sections of the two parts share depth, as measured. */
export const sectionMeetings = (
  { fit, fixed, moving }: Pick<Joint, 'fit' | 'fixed' | 'moving'>,
  ways: readonly Way[],
): Generator<Meeting<SectionMetal>> =>
  meetings(
    { fixed: fixed.sections.map(metalOf), moving: moving.sections.map(metalOf) },
    ways,
    matingRule({ fit }),
    'as-measured',
  );
