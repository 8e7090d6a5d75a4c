import { apply, inverse } from '../../geometry/plane/rigid.ts';
import { distance } from '../../geometry/plane/vec.ts';
import type { Instant, NearestPlaces } from '../check-result.ts';
import { type Claim, isZero } from './verify-claim.ts';
import { type Doubt, doubt } from './verify-doubt.ts';
import { isNamed, type Meeting, pairText } from './verify-extrusions.ts';
import { instant, roundingMm, slackMm } from './verify-limits.ts';
import { placementAt, standOffAt, type Way } from './verify-way.ts';

/** Two points a result points out, with the instant where it is not home. */
export type NearestClaim = NearestPlaces & Partial<Instant>;

/** What two points say against a claim: that they lie elsewhere, at another time, or another way apart. */
export function nearestDoubts(claim: Claim, nearest: NearestClaim | null, meetings: readonly Meeting[]): Doubt[] {
  const { where } = claim;
  if (nearest === null) {
    return claim.clearanceMm === null ? [] : [doubt('witness', where, 'A clearance is given without its two points.')];
  }
  const { at = 0, leg, turnRad, standOffMm } = nearest;
  const meeting = meetings.find((m) => isNamed(m, nearest));
  if (meeting === undefined || at < meeting.stretch.from - instant || at > meeting.stretch.to + instant) {
    return [doubt('witness', where, `${pairText(nearest)} share no depth at ${at}.`)];
  }
  const moment = leg === undefined ? null : { leg, at, turnRad: turnRad ?? NaN, standOffMm: standOffMm ?? NaN };
  return [
    ...(moment ? momentDoubts(where, moment, meeting.way) : []),
    ...placeDoubts(claim, nearest, meeting, at),
    ...distanceDoubts(claim, nearest),
  ];
}

/** Turn and stand-off must be those of the leg at that fraction. */
export function momentDoubts(where: Doubt['where'], { leg, at, turnRad, standOffMm }: Instant, way: Way): Doubt[] {
  const [turnDeg, fromDeg] = [degrees(turnRad), degrees(way.from.turnRad)];
  const spanDeg = degrees(way.to.turnRad) - fromDeg;
  const spanMm = way.to.standOffMm - way.from.standOffMm;
  const foundMm = standOffAt(way, at);
  const agrees =
    at >= 0 &&
    at <= 1 &&
    Math.abs(fromDeg + at * spanDeg - turnDeg) <= instant * (1 + Math.abs(spanDeg)) &&
    Math.abs(foundMm - standOffMm) <= instant * (1 + Math.abs(spanMm));
  if (agrees) return [];
  const text = `Leg ${leg} at ${at} has turn ${fromDeg + at * spanDeg}° and stand-off ${foundMm} mm; given are ${turnDeg}° and ${standOffMm} mm.`;
  return [doubt('moment', where, text, { claimedMm: standOffMm, foundMm })];
}

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** A pair that comes into one another's depth overlapped touches first at a point inside both. */
function placeDoubts({ where, state }: Claim, nearest: NearestClaim, meeting: Meeting, at: number): Doubt[] {
  const { fixedAt, movingAt } = nearest;
  const slack = slackMm(meeting, movingAt);
  const mayBeInside = state !== 'clear' && at <= meeting.stretch.from + instant;
  const gaps = [
    meeting.fixed.gapMm(fixedAt, 1),
    meeting.moving.gapMm(apply(inverse(placementAt(meeting.way, at)), movingAt), 1),
  ];
  const text = `A point of ${pairText(nearest)} lies off its outline.`;
  return gaps
    .filter((gap) => Math.abs(gap) > slack && !(mayBeInside && gap < 0))
    .map((foundMm) => doubt('witness', where, text, { claimedMm: 0, foundMm, at: [fixedAt.x, fixedAt.y] }));
}

function distanceDoubts(claim: Claim, { fixedAt, movingAt }: NearestClaim): Doubt[] {
  const { where, state, clearanceMm, toleranceMm } = claim;
  const foundMm = distance(fixedAt, movingAt);
  if (
    (state === 'undecided' && !isZero(claim)) ||
    Math.abs(foundMm - (clearanceMm ?? 0)) <= 2 * roundingMm + toleranceMm
  )
    return [];
  const text = `The two points are ${foundMm} mm apart, not ${clearanceMm} mm.`;
  return [doubt('witness-distance', where, text, { claimedMm: clearanceMm, foundMm, at: [fixedAt.x, fixedAt.y] })];
}
