import { isMotionless, type Motion, partOfMotion } from '../geometry/motion/motion.ts';
import type { Passage } from '../geometry/motion/passage.ts';
import { identity, rigid } from '../geometry/plane/rigid.ts';
import { vec } from '../geometry/plane/vec.ts';
import { home, type Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { passageOf } from './passages.ts';
import { type DepthRule, type DepthView, type Fractions, meetingFractions, wholeLeg } from './shared-depth.ts';
import type { Solid } from './solids.ts';

/** How one moving solid passes one fixed solid while they share depth on one leg; `leg` null is home. */
export interface PairPassage {
  readonly fixed: Solid;
  readonly moving: Solid;
  /** Counts from 1. */
  readonly leg: number | null;
  /** The part of the leg that `passage` runs over. */
  readonly fractions: Fractions;
  readonly passage: Passage;
  readonly errors: PairErrors;
  /** Told twice where the errors of depth make it share depth for longer: then only what is said at worst counts this. */
  readonly view: DepthView;
}

/** The tracing error of a pair, mm: its terms added straight, and by root sum of squares. */
export interface PairErrors {
  readonly errorMm: number;
  readonly errorRssMm: number;
}

/** Errors of place that every pair has, beside its two outlines: half the dowel play and the rms of the dowel fit. */
export type PlaceErrors = readonly number[];

export const placeErrors = ({ dowelPlayMm, fitRmsMm }: Joint): PlaceErrors => [dowelPlayMm, fitRmsMm];

/** What every pair of a job is judged by. */
export interface PairRule {
  readonly depth: DepthRule;
  readonly place: PlaceErrors;
}

/** Sections of the two parts, which mate at depth 0. */
export const pairRule = (joint: Joint): PairRule => ({
  depth: { marginMm: joint.fit.depthMarginMm, facesMate: true },
  place: placeErrors(joint),
});

/** Standing still, told as a turn about the axis by nothing: the frames about the axis serve every leg. */
const standing: Motion = { kind: 'turn', pole: vec(0, 0), angleRad: 0 };

/** The pairs standing at a position, home where none is given, that share depth there. */
export const pairsAt = (
  fixed: readonly Solid[],
  moving: readonly Solid[],
  rule: PairRule,
  position = home,
): PairPassage[] => {
  const stay = { from: position, to: position };
  const start = position === home ? identity : rigid(position.turnRad, position.shift);
  return everyPair(fixed, moving).flatMap(([f, m]) =>
    seenBothWays(f, m, stay, null, rule, wholeLeg, () => passageOf(f.tree, m.tree, start, standing)),
  );
};

/** The pairs over the part of a leg, or of a piece of it, during which they share depth. */
export const pairsOnLeg = (
  fixed: readonly Solid[],
  moving: readonly Solid[],
  leg: Leg,
  count: number,
  rule: PairRule,
  piece = wholeLeg,
): PairPassage[] =>
  everyPair(fixed, moving).flatMap(([f, m]) => {
    let passed: Passage | null = null;
    return seenBothWays(f, m, leg, count, rule, piece, (fractions) => {
      // where nothing moves in the plane, no stretch of the leg differs from another
      if (passed === null || !isMotionless(leg.motion)) passed = passageOnLeg(f, m, leg, fractions);
      return passed;
    });
  });

/** Every two solids of which at least one was traced. */
const everyPair = (fixed: readonly Solid[], moving: readonly Solid[]): (readonly [Solid, Solid])[] =>
  fixed.flatMap((f) => moving.filter((m) => !(f.untraced && m.untraced)).map((m) => [f, m] as const));

const views = ['as-measured', 'at-worst'] as const;

function seenBothWays(
  fixed: Solid,
  moving: Solid,
  leg: Pick<Leg, 'from' | 'to'>,
  count: number | null,
  { depth, place }: PairRule,
  piece: Fractions,
  passageOver: (fractions: Fractions) => Passage,
): PairPassage[] {
  const errors = errorsOf(fixed, moving, place);
  const found: PairPassage[] = [];
  for (const view of views) {
    const fractions = commonTo(meetingFractions(fixed, moving, leg, depth, view), piece);
    if (fractions === null || found.some((seen) => isSame(seen.fractions, fractions))) continue;
    found.push({ fixed, moving, leg: count, fractions, passage: passageOver(fractions), errors, view });
  }
  return found;
}

const isSame = (a: Fractions, b: Fractions): boolean => a.from === b.from && a.to === b.to;

function commonTo(shared: Fractions | null, piece: Fractions): Fractions | null {
  if (shared === null || piece === wholeLeg) return shared;
  const [from, to] = [Math.max(shared.from, piece.from), Math.min(shared.to, piece.to)];
  return from < to ? { from, to } : null;
}

/** How two solids pass in the plane over part of a leg, whatever their depths. */
export function passageOnLeg(fixed: Solid, moving: Solid, leg: Leg, { from, to }: Fractions): Passage {
  const part = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, from, to);
  const motion = isMotionless(part.motion) ? standing : part.motion;
  return passageOf(fixed.tree, moving.tree, part.start, motion);
}

/** The fraction of the leg that a fraction of the passage stands for. */
export const fractionOfLeg = ({ from, to }: Fractions, at: number): number => from + at * (to - from);

function errorsOf(fixed: Solid, moving: Solid, place: PlaceErrors): PairErrors {
  const terms = [fixed.traceErrorMm, moving.traceErrorMm, ...place];
  return { errorMm: terms.reduce((sum, e) => sum + e, 0), errorRssMm: Math.hypot(...terms) };
}
