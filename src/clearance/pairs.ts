import { isMotionless, type Motion, partOfMotion } from '../geometry/motion/motion.ts';
import type { Passage } from '../geometry/motion/passage.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Joint } from '../joint/joint.ts';
import { passageOf } from './passages.ts';
import { matingRule, type Passing, passings, type Sides, type Way } from './passings.ts';
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

export const pairRule = (joint: Joint): PairRule => ({ depth: matingRule(joint), place: placeErrors(joint) });

/** Ends of castings meet where they are, whatever clearance is asked: what a builder feels, who has no margin. */
export const asTheyAre: PairRule = { depth: { marginMm: 0, facesMate: true }, place: [] };

/** Standing still, told as a turn about the axis by nothing: the frames about the axis serve every leg. */
const standing: Motion = { kind: 'turn', pole: vec(0, 0), angleRad: 0 };

/** The pairs over the part of each way, or of a piece of it, during which they share depth. */
export const pairsOn = (
  solids: Sides<Solid>,
  ways: readonly Way[],
  rule: PairRule,
  piece: Fractions = wholeLeg,
): PairPassage[] =>
  [...passings(solids, ways)]
    .filter(({ fixed, moving }) => !(fixed.untraced && moving.untraced))
    .flatMap((passing) => seenBothWays(passing, rule, piece));

const views = ['as-measured', 'at-worst'] as const;

function seenBothWays(passing: Passing<Solid>, { depth, place }: PairRule, piece: Fractions): PairPassage[] {
  const { fixed, moving, leg, count } = passing;
  const errors = errorsOf(fixed, moving, place);
  const found: PairPassage[] = [];
  for (const view of views) {
    const fractions = commonTo(meetingFractions(fixed, moving, leg, depth, view), piece);
    if (fractions === null || found.some((seen) => isSame(seen.fractions, fractions))) continue;
    // where nothing moves in the plane, no stretch of the leg differs from another
    const passed = isMotionless(leg.motion) ? found[0]?.passage : undefined;
    const passage = passed ?? passageOnLeg(passing, fractions);
    found.push({ fixed, moving, leg: count, fractions, passage, errors, view });
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
export function passageOnLeg({ fixed, moving, leg }: Passing<Solid>, { from, to }: Fractions): Passage {
  const part = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, from, to);
  const motion = isMotionless(part.motion) ? standing : part.motion;
  return passageOf(fixed.tree, moving.tree, part.start, motion);
}

/** The fraction of the leg that a fraction of the passage stands for. */
export const fractionOfLeg = ({ from, to }: Fractions, at: number): number => from + at * (to - from);

export function errorsOf(fixed: Solid, moving: Solid, place: PlaceErrors): PairErrors {
  const terms = [fixed.traceErrorMm, moving.traceErrorMm, ...place];
  return { errorMm: terms.reduce((sum, e) => sum + e, 0), errorRssMm: Math.hypot(...terms) };
}
