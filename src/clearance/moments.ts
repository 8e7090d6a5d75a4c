import type { FirstTouch, FoulingInterval } from '../answers/check-answer.ts';
import { round6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Leg } from '../job/path.ts';
import { type Measure, stateOf } from './measure.ts';
import { fractionOfLeg, type PairPassage } from './pairs.ts';

const radToDeg = 180 / Math.PI;

/** Where a pair is nearest or first touches, as an answer gives it. */
export function witnessOf({ passage, fixed, moving }: PairPassage) {
  const { nearest } = passage;
  if (nearest === null) return null;
  return {
    fixedAt: roundPoint6(nearest.fixedAt),
    movingAt: roundPoint6(nearest.movingAt),
    fixedSection: fixed.name,
    movingSection: moving.name,
  };
}

/** When on the way in a pair is nearest or first touches; at home it is not on a leg. */
export function momentOf(pair: PairPassage, legs: readonly Leg[]) {
  return momentAt(pair, legs, pair.passage.nearest?.at ?? 0);
}

function momentAt({ leg: count, fractions }: PairPassage, legs: readonly Leg[], atPassage: number) {
  const leg = legs[(count ?? 0) - 1];
  if (count === null || leg === undefined) return null;
  const at = fractionOfLeg(fractions, atPassage);
  return {
    leg: count,
    at: round6(at),
    turnDeg: round6((leg.from.turnRad + at * (leg.to.turnRad - leg.from.turnRad)) * radToDeg),
    standOffMm: round6(leg.from.standOffMm + at * (leg.to.standOffMm - leg.from.standOffMm)),
  };
}

/** The first instant of the way in at which outlines meet; null when they never do, or nobody can know. */
export function firstTouchOf({ state, decisive }: Measure, legs: readonly Leg[]): FirstTouch | null {
  if (decisive === null || (state !== 'fouls' && state !== 'touches')) return null;
  const moment = momentOf(decisive, legs);
  const where = decisive.passage.nearest?.fixedAt;
  if (moment === null || where === undefined) return null;
  const { fixed, moving } = decisive;
  return { ...moment, fixedSection: fixed.name, movingSection: moving.name, where: roundPoint6(where) };
}

/** Every part of the way in on which a pair fouls, in order. */
export function foulingOf(pairs: readonly PairPassage[], legs: readonly Leg[]): FoulingInterval[] {
  return pairs
    .filter((pair) => pair.view === 'as-measured' && stateOf(pair) === 'fouls')
    .flatMap((pair) => pair.passage.overlaps.map(({ from, to }) => intervalOf(pair, legs, from, to)))
    .filter((interval) => interval !== null)
    .sort((a, b) => a.leg - b.leg || a.fromAt - b.fromAt);
}

function intervalOf(pair: PairPassage, legs: readonly Leg[], from: number, to: number): FoulingInterval | null {
  const start = momentAt(pair, legs, from);
  const end = momentAt(pair, legs, to);
  if (start === null || end === null) return null;
  return {
    leg: start.leg,
    fromAt: start.at,
    toAt: end.at,
    fromTurnDeg: start.turnDeg,
    toTurnDeg: end.turnDeg,
    fromStandOffMm: start.standOffMm,
    toStandOffMm: end.standOffMm,
    fixedSection: pair.fixed.name,
    movingSection: pair.moving.name,
  };
}
