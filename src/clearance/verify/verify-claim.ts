import type { State } from '../check-result.ts';
import type { Doubt } from './verify-doubt.ts';
import type { Meeting, PairName } from './verify-extrusions.ts';
import { heldToMm } from './verify-limits.ts';

/** What a result says of home, of the way in or of one rotating part; mm. */
export interface Claim {
  readonly where: Doubt['where'];
  readonly state: State;
  readonly clearanceMm: number | null;
  readonly toleranceMm: number;
  /** Undefined where the result does not give it. */
  readonly worstClearanceMm?: number | null;
  readonly deepestMm?: number | null;
  readonly errorMm?: number | null;
  readonly alongCrankMm?: number | null;
  readonly askedMm: number;
  /** Stretches on which pairs are said to foul; undefined where the result does not list them. */
  readonly fouling?: readonly FoulStretch[];
}

export interface FoulStretch extends PairName {
  readonly fromAt: number;
  readonly toAt: number;
}

/** What may be wrong between a pair, mm: both outlines, and what moves one part against the other. */
export const errorTermsMm = (
  { fixedExtrusion, movingExtrusion }: Meeting,
  placeErrorsMm: readonly number[],
): readonly number[] => [fixedExtrusion.traceErrorMm, movingExtrusion.traceErrorMm, ...placeErrorsMm];

/** Nobody has looked for metal in one of the two. */
export const isUntraced = ({ fixedExtrusion, movingExtrusion }: Meeting): boolean =>
  fixedExtrusion.untraced || movingExtrusion.untraced;

/** Whether a claim says that metal meets, or may meet where nobody traced: its clearance is 0 and its two points are one. */
export const isZero = ({ state, toleranceMm }: Pick<Claim, 'state' | 'toleranceMm'>): boolean =>
  state === 'fouls' || state === 'touches' || (state === 'undecided' && toleranceMm <= heldToMm);
