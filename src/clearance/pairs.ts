import { isMotionless, type Motion, partOfMotion } from '../geometry/motion/motion.ts';
import { type Passage, passage } from '../geometry/motion/passage.ts';
import { identity, rigid } from '../geometry/rigid.ts';
import { vec } from '../geometry/vec.ts';
import type { Joint } from '../joint/joint.ts';
import { home, type Leg } from '../model/path.ts';
import { type Fractions, sharedFractions } from './shared-depth.ts';
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
}

/** The tracing error of a pair, mm: its terms added straight, and by root sum of squares. */
export interface PairErrors {
  readonly errorMm: number;
  readonly errorRssMm: number;
}

/** Errors of place that every pair has, beside its two outlines: half the dowel play and the rms of the dowel fit. */
export type PlaceErrors = readonly number[];

export const placeErrors = ({ dowelPlayMm, fitRmsMm }: Joint): PlaceErrors => [dowelPlayMm, fitRmsMm];

/** Standing still, told as a turn about the axis by nothing: the frames about the axis serve every leg. */
const standing: Motion = { kind: 'turn', pole: vec(0, 0), angleRad: 0 };

/** The pair standing at a position, home where none is given; null when it shares no depth there. */
export function pairAt(
  fixed: Solid,
  moving: Solid,
  marginMm: number,
  place: PlaceErrors,
  position = home,
): PairPassage | null {
  const stay = { from: position, to: position };
  const fractions = sharedFractions(fixed.depth, moving.depth, stay, marginMm);
  if (fractions === null || bothUntraced(fixed, moving)) return null;
  const start = position === home ? identity : rigid(position.turnRad, position.shift);
  const passed = passage(fixed.tree, moving.tree, start, standing);
  return { fixed, moving, leg: null, fractions, passage: passed, errors: errorsOf(fixed, moving, place) };
}

const wholeLeg: Fractions = { from: 0, to: 1 };

/** The pair over the part of a leg, or of a piece of it, during which it shares depth; null when it never does. */
export function pairOnLeg(
  fixed: Solid,
  moving: Solid,
  leg: Leg,
  count: number,
  marginMm: number,
  place: PlaceErrors,
  piece = wholeLeg,
): PairPassage | null {
  const fractions = commonTo(sharedFractions(fixed.depth, moving.depth, leg, marginMm), piece);
  if (fractions === null || bothUntraced(fixed, moving)) return null;
  const passed = passageOnLeg(fixed, moving, leg, fractions);
  return { fixed, moving, leg: count, fractions, passage: passed, errors: errorsOf(fixed, moving, place) };
}

function commonTo(shared: Fractions | null, piece: Fractions): Fractions | null {
  if (shared === null || piece === wholeLeg) return shared;
  const [from, to] = [Math.max(shared.from, piece.from), Math.min(shared.to, piece.to)];
  return from < to ? { from, to } : null;
}

/** How two solids pass in the plane over part of a leg, whatever their depths. */
export function passageOnLeg(fixed: Solid, moving: Solid, leg: Leg, { from, to }: Fractions): Passage {
  const part = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, from, to);
  const motion = isMotionless(part.motion) ? standing : part.motion;
  return passage(fixed.tree, moving.tree, part.start, motion);
}

/** The fraction of the leg that a fraction of the passage stands for. */
export const fractionOfLeg = ({ from, to }: Fractions, at: number): number => from + at * (to - from);

const bothUntraced = (fixed: Solid, moving: Solid): boolean => fixed.untraced && moving.untraced;

function errorsOf(fixed: Solid, moving: Solid, place: PlaceErrors): PairErrors {
  const terms = [fixed.traceErrorMm, moving.traceErrorMm, ...place];
  return { errorMm: terms.reduce((sum, e) => sum + e, 0), errorRssMm: Math.hypot(...terms) };
}
