import type { Vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Wander } from '../job/wander.ts';
import type { DowelGap } from '../joint/dowel-gaps.ts';
import type { Foul } from './foul.ts';
import type { CheckNotice, ReasonCode, SectionPair } from './notices.ts';

/** As it is worst over pairs, in the order fouls, undecided, touches, clear. */
export type State = 'fouls' | 'undecided' | 'touches' | 'clear';

export type Verdict = 'goes' | 'should-go' | 'too-close' | 'fouls' | 'undecided';

/** The nearest places of two sections, in the joint frame, mm. */
export interface NearestPlaces extends SectionPair {
  readonly fixedAt: Vec;
  readonly movingAt: Vec;
}

/** An instant of the way in: `leg` counts from 1, `at` runs 0–1 along it. */
export interface Instant {
  readonly leg: number;
  readonly at: number;
  readonly turnRad: number;
  readonly standOffMm: number;
}

/** How two parts pass one another, worst pair over all; lengths in mm, proved for the outlines as traced. */
export interface Clearance {
  readonly state: State;
  /** 0 where it touches or fouls; null where no pair shares depth. */
  readonly clearanceMm: number | null;
  readonly toleranceMm: number;
  readonly errorMm: number | null;
  readonly errorRssMm: number | null;
  /** Of a foul: minus its depth and the error; null where it goes right through. */
  readonly worstClearanceMm: number | null;
  /** The metal the two share. */
  readonly foul: Foul;
  readonly endGapMm: number | null;
  /** Where something fouls, how near it comes along the crank: 0 where it goes into the other. */
  readonly alongCrankMm: number | null;
}

export interface HomeResult extends Clearance {
  readonly nearest: NearestPlaces | null;
}

/** The first instant at which outlines meet on the way in. */
export interface FirstTouch extends Instant, SectionPair {
  readonly where: Vec;
  /** Of the fixed part; null for sections without depth. */
  readonly depth: DepthRange | null;
  /** How far each dowel then is from its hole. */
  readonly dowelGaps: readonly DowelGap[];
}

/** A stretch of one leg on which one pair of sections fouls. */
export interface FoulingStretch extends SectionPair {
  readonly from: Instant;
  readonly to: Instant;
  /** Of the fixed part; null for sections without depth. */
  readonly depth: DepthRange | null;
}

export interface WayInResult extends Clearance {
  readonly nearest: (NearestPlaces & Instant) | null;
  readonly firstTouch: FirstTouch | null;
  /** In the order it is gone. */
  readonly fouling: readonly FoulingStretch[];
}

/** A part that runs round the crank, against one of the castings. */
export interface RotatingResult {
  readonly part: string;
  readonly against: 'moving' | 'fixed';
  readonly state: State;
  readonly clearanceMm: number | null;
  readonly toleranceMm: number;
  readonly nearest: NearestPlaces | null;
  /** When that is on the way in; null at home. */
  readonly instant: Instant | null;
}

/** What is kept at the least within a wander, mm, proved. */
export interface StrayedResult {
  /** Undecided where untraced metal may stand nearer than asked. */
  readonly state: 'clear' | 'undecided';
  /** Less than 0 where metal may come to touch; null where nothing can meet. */
  readonly clearanceMm: number | null;
  readonly worstClearanceMm: number | null;
  /** Of the way in, `leg` counting from 1. */
  readonly nearest: (SectionPair & { readonly leg: number }) | null;
}

/** The two castings, and each rotating part against the moving one, on every path within a wander. */
export interface WanderResult extends StrayedResult {
  readonly wander: Wander;
  /** Whether all that is asked is kept where nobody strays, and is not where one does. */
  readonly decides: boolean;
  readonly rotating: readonly (StrayedResult & { readonly part: string })[];
}

/** What a check finds, at full precision; plain data, so that it can be sent anywhere. */
export interface CheckResult {
  readonly verdict: Verdict;
  /** Why nothing is judged; null where the verdict stands by itself. Its notice is among the notices. */
  readonly reason: ReasonCode | null;
  readonly meetsClearance: boolean;
  readonly home: HomeResult;
  /** Null when only home is asked. */
  readonly wayIn: WayInResult | null;
  readonly rotating: readonly RotatingResult[];
  /** Null where the fit says nothing of straying. */
  readonly wander: WanderResult | null;
  /** Those of the joint among them. */
  readonly notices: readonly CheckNotice[];
}
