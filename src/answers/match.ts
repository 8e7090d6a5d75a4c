import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { MatchedPair } from '../holes/patterns/match-patterns.ts';
import type { PartMatch } from '../holes/patterns/part-match.ts';
import type { PatternHole } from '../holes/patterns/pattern.ts';
import type { StandardPattern } from '../holes/patterns/standard-pattern.ts';
import type { OtherPosition } from '../holes/patterns/symmetry.ts';
import type { MatchAnswer } from './match-answer.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';

/** Two patterns matched, as JSON, the answer of `fettle match --json`: mm and degrees, each figure rounded to 1e-6. */
export const matchAnswer = ({ fixed, moving, options, match, standards, goes }: PartMatch): MatchAnswer => ({
  format: 'fettle-match/1',
  fixed: fixed.name,
  moving: moving.name,
  reachMm: round6(options.reachMm),
  centred: options.centred,
  conclusion: match.conclusion,
  goes,
  hand: match.hand,
  otherHand: { ...match.otherHand, rmsMm: roundOrNull(match.otherHand.rmsMm) },
  turnDeg: roundDegrees(match.turnRad),
  shiftMm: roundPoint6(match.shift),
  rmsMm: roundOrNull(match.rmsMm),
  largestMm: roundOrNull(match.largestMm),
  pairs: match.pairs.map(pairAnswer),
  bolts: match.bolts && {
    conclusion: match.bolts.conclusion,
    turnDeg: roundDegrees(match.bolts.motion.turnRad),
    shiftMm: roundPoint6(match.bolts.motion.shift),
    fullest: roundOrNull(match.bolts.fullest),
  },
  fixedLeft: idsOf(match.fixedLeft),
  movingLeft: idsOf(match.movingLeft),
  fold: match.fold,
  others: match.others.map(otherAnswer),
  byChance: round6(match.byChance),
  trials: match.trials,
  allTried: match.allTried,
  standards: {
    fixed: standards.fixed.map(standardAnswer),
    moving: standards.moving.map(standardAnswer),
  },
});

const idsOf = (holes: readonly PatternHole[]): string[] => holes.map(({ id }) => id);

const pairAnswer = ({ fixed, moving, offMm, allowance, linesUp }: MatchedPair): MatchAnswer['pairs'][number] => ({
  fixed: fixed.id,
  moving: moving.id,
  offMm: round6(offMm),
  allowedMm: roundOrNull(allowance?.mm ?? null),
  fastener: allowance?.fastener ?? null,
  linesUp,
});

const otherAnswer = ({ turnRad, shift, pairs, rmsMm, asGood }: OtherPosition): MatchAnswer['others'][number] => ({
  turnDeg: roundDegrees(turnRad),
  shiftMm: roundPoint6(shift),
  pairs,
  rmsMm: round6(rmsMm),
  asGood,
});

const standardAnswer = (pattern: StandardPattern): MatchAnswer['standards']['fixed'][number] => ({
  standard: pattern.standard,
  number: pattern.number,
  basis: pattern.source.basis,
  thread: pattern.thread,
  boltCircleMm: round6(pattern.boltCircleMm),
  holes: pattern.holes,
  found: idsOf(pattern.found),
  rmsMm: round6(pattern.rmsMm),
  centreMm: roundPoint6(pattern.centre),
  turnDeg: roundDegrees(pattern.turnRad),
});
