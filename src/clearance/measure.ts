import { greatestToleranceMm, leastToleranceMm } from '../geometry/motion/tolerances.ts';
import type { Clearance, State } from './check-result.ts';
import { fractionOfLeg, type PairPassage } from './pairs.ts';
import { heldToMm } from './tolerances.ts';

/** What the passages of a set of pairs come to, in mm. */
export interface Measure extends Pick<Clearance, 'state' | 'clearanceMm' | 'toleranceMm' | 'errorMm' | 'errorRssMm'> {
  /** With every error against the builder, those of depth too; null when no pair shares depth even then. */
  readonly worstClearanceMm: number | null;
  /** The pair that decides: nearest when clear, first to touch when not. */
  readonly decisive: PairPassage | null;
}

const severity: Record<State, number> = { fouls: 3, undecided: 2, touches: 1, clear: 0 };

/** The state of one pair: metal that nobody has looked for may or may not foul. */
export function stateOf({ passage, fixed, moving }: PairPassage): State {
  if (passage.toleranceMm > greatestToleranceMm) return 'undecided';
  if ((fixed.untraced || moving.untraced) && passage.state !== 'clear') return 'undecided';
  return passage.state;
}

/**
 * The worst over pairs. Untraced metal counts as soon as it would stand nearer than the asked clearance: beyond that
 * it could not change the answer.
 */
export function measureOf(all: readonly PairPassage[], askedMm: number): Measure {
  const counting = all.filter((pair) => !isUntraced(pair) || lowerBoundMm(pair) < askedMm || stateOf(pair) !== 'clear');
  const pairs = counting.filter(({ view }) => view === 'as-measured');
  const worstClearanceMm = leastOf(counting.map((pair) => lowerBoundMm(pair) - pair.errors.errorMm));
  const state = pairs.map(stateOf).reduce(worse, 'clear' as State);
  const decisive = decisiveOf(pairs, state);
  const toleranceMm = Math.max(leastToleranceMm, ...pairs.map((pair) => pair.passage.toleranceMm));
  if (decisive === null) {
    return { state, clearanceMm: null, toleranceMm, errorMm: null, errorRssMm: null, worstClearanceMm, decisive };
  }
  return {
    state,
    clearanceMm: clearanceOf(pairs, state),
    toleranceMm,
    ...decisive.errors,
    worstClearanceMm,
    decisive,
  };
}

export const leastOf = (all: readonly number[]): number | null => (all.length === 0 ? null : Math.min(...all));

export const worse = (a: State, b: State): State => (severity[b] > severity[a] ? b : a);

/** Whether a measure holds an asked clearance, to a micrometre. */
export const holdsClearance = (state: State, clearanceMm: number | null, askedMm: number): boolean =>
  state !== 'fouls' && state !== 'undecided' && (clearanceMm === null || clearanceMm >= askedMm - heldToMm);

const isUntraced = ({ fixed, moving }: PairPassage): boolean => fixed.untraced || moving.untraced;

/** What is proved of one pair: its distance where that is known well enough, less the error where not. */
export function lowerBoundMm(pair: PairPassage): number {
  const { distanceMm, toleranceMm } = pair.passage;
  if (stateOf(pair) !== 'undecided') return distanceMm ?? 0;
  return isUntraced(pair) ? 0 : Math.max(0, (distanceMm ?? 0) - toleranceMm);
}

function clearanceOf(pairs: readonly PairPassage[], state: State): number {
  return state === 'fouls' || state === 'touches' ? 0 : Math.min(...pairs.map(lowerBoundMm));
}

function decisiveOf(pairs: readonly PairPassage[], state: State): PairPassage | null {
  const candidates = pairs.filter((pair) => stateOf(pair) === state && pair.passage.nearest !== null);
  const order = state === 'clear' || state === 'undecided' ? byDistance : byTime;
  return candidates.reduce<PairPassage | null>(
    (first, pair) => (first && order(first, pair) <= 0 ? first : pair),
    null,
  );
}

const byDistance = (a: PairPassage, b: PairPassage): number => lowerBoundMm(a) - lowerBoundMm(b);

const byTime = (a: PairPassage, b: PairPassage): number => (a.leg ?? 0) - (b.leg ?? 0) || startOf(a) - startOf(b);

const startOf = ({ passage, fractions }: PairPassage): number => fractionOfLeg(fractions, passage.nearest?.at ?? 0);
