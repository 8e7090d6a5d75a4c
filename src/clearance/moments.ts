import { round6 } from '../geometry/plane/rounding.ts';
import type { Leg } from '../job/path.ts';
import { dowelGaps } from '../joint/dowel-gaps.ts';
import type { Joint } from '../joint/joint.ts';
import type { FirstTouch, FoulingStretch, Instant, NearestPlaces } from './check-result.ts';
import { type Measure, stateOf } from './measure.ts';
import { meetingDepth } from './meeting-depth.ts';
import { fractionOfLeg, type PairPassage } from './pairs.ts';

/** Where a pair is nearest or first touches. */
export function nearestOf({ passage, fixed, moving }: PairPassage): NearestPlaces | null {
  const { nearest } = passage;
  if (nearest === null) return null;
  const { fixedAt, movingAt } = nearest;
  return { fixedAt, movingAt, fixedSection: fixed.name, movingSection: moving.name };
}

/** When on the way in a pair is nearest or first touches; at home it is not on a leg. */
export const instantOf = (pair: PairPassage, legs: readonly Leg[]): Instant | null =>
  instantAt(pair, legs, pair.passage.nearest?.at ?? 0);

function instantAt({ leg: count, fractions }: PairPassage, legs: readonly Leg[], atPassage: number): Instant | null {
  const leg = legs[(count ?? 0) - 1];
  if (count === null || leg === undefined) return null;
  const at = fractionOfLeg(fractions, atPassage);
  return {
    leg: count,
    at,
    turnRad: leg.from.turnRad + at * (leg.to.turnRad - leg.from.turnRad),
    standOffMm: leg.from.standOffMm + at * (leg.to.standOffMm - leg.from.standOffMm),
  };
}

/** The first instant of the way in at which outlines meet; null when they never do, or nobody can know. */
export function firstTouchOf(joint: Joint, { state, decisive }: Measure): FirstTouch | null {
  if (decisive === null || (state !== 'fouls' && state !== 'touches')) return null;
  const instant = instantOf(decisive, joint.fit.legs);
  const where = decisive.passage.nearest?.fixedAt;
  if (instant === null || where === undefined) return null;
  const pair = { fixedSection: decisive.fixed.name, movingSection: decisive.moving.name };
  return {
    ...instant,
    ...pair,
    where,
    depth: meetingDepth(joint, pair, instant.standOffMm, instant.standOffMm),
    dowelGaps: dowelGaps(joint, instant.leg, instant.at),
  };
}

/** Every part of the way in on which a pair fouls, in order. */
export function foulingOf(joint: Joint, pairs: readonly PairPassage[]): FoulingStretch[] {
  return pairs
    .filter((pair) => pair.view === 'as-measured' && stateOf(pair) === 'fouls')
    .flatMap((pair) => pair.passage.overlaps.map(({ from, to }) => stretchOf(joint, pair, from, to)))
    .filter((stretch) => stretch !== null)
    .sort((a, b) => a.from.leg - b.from.leg || orderOf(a) - orderOf(b));
}

/** What begins at the same instant stays in the order of the sections, whatever the last digits say. */
const orderOf = ({ from }: FoulingStretch): number => round6(from.at);

function stretchOf(joint: Joint, pair: PairPassage, from: number, to: number): FoulingStretch | null {
  const { legs } = joint.fit;
  const [start, end] = [instantAt(pair, legs, from), instantAt(pair, legs, to)];
  if (start === null || end === null) return null;
  const names = { fixedSection: pair.fixed.name, movingSection: pair.moving.name };
  const depth = meetingDepth(joint, names, start.standOffMm, end.standOffMm);
  return { from: start, to: end, ...names, depth };
}
