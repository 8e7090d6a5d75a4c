import { type Claim, errorTermsMm, type FoulStretch, isUntraced, isZero } from './verify-claim.ts';
import { type Doubt, type DoubtCode, doubt } from './verify-doubt.ts';
import { isNamed, type Meeting, nameOf, pairText } from './verify-extrusions.ts';
import { heldToMm, instant, onOutlineMm, overlapsMm, roundingMm, slackMm } from './verify-limits.ts';
import { type LeastGap, type Looks, leastGap, noGap } from './verify-look.ts';
import type { Stretch } from './verify-way.ts';

/** What was found of a claim. */
export interface ClaimEvidence {
  readonly doubts: readonly Doubt[];
  /** The least over pairs of its gap less its tracing error, as far as found; null where no pair shares depth. */
  readonly worstMm: number | null;
}

/** How exactly a figure that no witness bears out is found again. */
const foundWithinMm = 0.01;

/** Looks at every pair that shares depth for something nearer than claimed, and for the overlap that is claimed. */
export function lookInto(
  claim: Claim,
  meetings: readonly Meeting[],
  placeErrorsMm: readonly number[],
  looks: Looks,
  mostLooks: number,
): Pick<ClaimEvidence, 'doubts'> {
  const seen = seenOf(claim, -Infinity, meetings, placeErrorsMm, looks, mostLooks);
  const sharesDepth = seen.some((pair) => counts(claim, pair));
  return {
    doubts: [
      ...stateDoubts(claim, sharesDepth),
      ...gravest(seen.flatMap((pair) => floorDoubts(claim, pair))),
      ...causeDoubts(claim, seen),
    ],
  };
}

/** Looks at every pair that shares depth with all errors at their worst for something nearer than is claimed then. */
export function lookAtWorst(
  claim: Claim,
  meetings: readonly Meeting[],
  placeErrorsMm: readonly number[],
  looks: Looks,
  mostLooks: number,
): ClaimEvidence {
  const seen = seenOf(claim, claim.worstClearanceMm ?? -Infinity, meetings, placeErrorsMm, looks, mostLooks);
  const worsts = seen.filter((pair) => counts(claim, pair)).map(({ gapMm, errorMm }) => Math.max(0, gapMm) - errorMm);
  const worstMm = worsts.length === 0 ? null : Math.min(...worsts);
  // how deep a foul goes is looked into by itself
  if (claim.state === 'fouls') return { worstMm, doubts: foulWorstDoubts(claim) };
  return {
    worstMm,
    doubts: [...gravest(seen.flatMap((pair) => worstDoubts(claim, pair))), ...attainedDoubts(claim, worstMm)],
  };
}

/** Of a foul that goes into other metal, its worst clearance is minus its depth and its error, or less. */
function foulWorstDoubts({ where, worstClearanceMm, deepestMm, errorMm, alongCrankMm }: Claim): Doubt[] {
  if (worstClearanceMm === undefined || worstClearanceMm === null || alongCrankMm !== 0) return [];
  const mostMm = 0 - (deepestMm ?? 0) - (errorMm ?? 0);
  if (worstClearanceMm <= mostMm + 2 * roundingMm) return [];
  const text = `A foul ${deepestMm} mm deep, ± ${errorMm} mm, is worse than ${worstClearanceMm} mm.`;
  return [doubt('worst-clearance', where, text, { claimedMm: worstClearanceMm, foundMm: mostMm })];
}

function seenOf(
  claim: Claim,
  worstMm: number,
  meetings: readonly Meeting[],
  placeErrorsMm: readonly number[],
  looks: Looks,
  mostLooks: number,
): PairGap[] {
  return meetings.map((meeting) => {
    const errorMm = errorTermsMm(meeting, placeErrorsMm).reduce((sum, e) => sum + e);
    return lookAt(claim, meeting, errorMm, worstMm + errorMm, looks, mostLooks / meetings.length);
  });
}

/** What was found of one pair; the gap is no more than 0 where the claim has it fouling. */
interface PairGap extends LeastGap {
  readonly meeting: Meeting;
  readonly errorMm: number;
  /** The least gap where the claim does not have it fouling. */
  readonly freeGapMm: number;
}

function lookAt(
  claim: Claim,
  meeting: Meeting,
  errorMm: number,
  worstFloorMm: number,
  looks: Looks,
  mostLooks: number,
): PairGap {
  const fouling = (claim.fouling ?? []).filter((foul) => isNamed(meeting, foul));
  const free = without(meeting.stretch, fouling);
  const target = Math.max(0, floorMm(claim, meeting), fouling.length > 0 ? 0 : worstFloorMm);
  const found = free
    .map((stretch) => leastGap(meeting, stretch, target, looks, mostLooks / free.length))
    .reduce((a, b) => (b.gapMm < a.gapMm ? b : a), noGap);
  const gapMm = fouling.length > 0 ? Math.min(0, found.gapMm) : found.gapMm;
  return { ...found, gapMm, meeting, errorMm, freeGapMm: found.gapMm };
}

/** What is left of a stretch between those on which a pair fouls. */
function without({ from, to }: Stretch, fouling: readonly FoulStretch[]): Stretch[] {
  if (fouling.length === 0) return [{ from, to }];
  const inOrder = [...fouling].sort((a, b) => a.fromAt - b.fromAt);
  const starts = [from, ...inOrder.map(({ toAt }) => toAt)];
  const ends = [...inOrder.map(({ fromAt }) => fromAt), to];
  return starts
    .map((start, i) => ({ from: start, to: ends[i] as number }))
    .filter((part) => part.to - part.from > instant);
}

/** Untraced metal counts as soon as it would stand nearer than the asked clearance. */
const counts = ({ askedMm }: Claim, { meeting, gapMm }: PairGap): boolean => !isUntraced(meeting) || gapMm < askedMm;

/** The gap that a pair may not go below; -Infinity where the claim allows it anything. */
function floorMm({ state, clearanceMm, toleranceMm, askedMm, fouling }: Claim, meeting: Meeting): number {
  switch (state) {
    case 'clear':
      return isUntraced(meeting) ? Math.min(clearanceMm ?? askedMm, askedMm) : (clearanceMm ?? 0);
    case 'touches':
      return 0;
    case 'fouls':
      return fouling === undefined || isUntraced(meeting) ? -Infinity : 0;
    case 'undecided':
      if (isUntraced(meeting) || (toleranceMm > heldToMm && clearanceMm === 0)) return -Infinity;
      return clearanceMm ?? 0;
  }
}

/** The gap at which a pair's error would take it below the worst clearance claimed. */
const worstFloorMm = ({ worstClearanceMm }: Claim, errorMm: number): number =>
  worstClearanceMm === undefined || worstClearanceMm === null ? -Infinity : worstClearanceMm + errorMm;

function floorDoubts(claim: Claim, seen: PairGap): Doubt[] {
  const { meeting, place, freeGapMm } = seen;
  const floor = floorMm(claim, meeting);
  // an instant is rounded too, and metal goes on moving while it is
  const slack = claim.toleranceMm + roundingMm + (floor > 0 ? 0 : slackMm(meeting, place));
  if (freeGapMm >= floor - slack) return [];
  const what = isUntraced(meeting) ? 'untraced' : floor > 0 ? 'nearer' : 'overlap';
  return [pairDoubt(what, claim, seen, floor, freeGapMm)];
}

function worstDoubts(claim: Claim, seen: PairGap): Doubt[] {
  const floor = worstFloorMm(claim, seen.errorMm);
  const gapMm = Math.max(0, seen.gapMm);
  if (!counts(claim, seen) || gapMm >= floor - claim.toleranceMm - roundingMm) return [];
  return [pairDoubt('worst-clearance', claim, seen, floor - seen.errorMm, gapMm - seen.errorMm)];
}

function pairDoubt(
  what: DoubtCode,
  { where }: Claim,
  { meeting, at, place }: PairGap,
  claimedMm: number,
  foundMm: number,
): Doubt {
  const text = `${pairText(nameOf(meeting))} at ${at}: at least ${claimedMm} mm is claimed, ${foundMm} mm found.`;
  return doubt(what, where, text, { claimedMm, foundMm, at: [place.x, place.y] });
}

/** Of doubts that say the same of several pairs, the one that is farthest out. */
function gravest(doubts: readonly Doubt[]): Doubt[] {
  const short = ({ claimedMm, foundMm }: Doubt): number => (claimedMm ?? 0) - (foundMm ?? 0);
  const codes = [...new Set(doubts.map(({ what }) => what))];
  return codes.map((code) =>
    doubts.filter(({ what }) => what === code).reduce((a, b) => (short(b) > short(a) ? b : a)),
  );
}

/** What the figures of a claim say of one another. */
function stateDoubts({ where, state, clearanceMm, toleranceMm }: Claim, sharesDepth: boolean): Doubt[] {
  const zero = isZero({ state, toleranceMm });
  const fits =
    clearanceMm === null ? state === 'clear' : zero ? clearanceMm === 0 : clearanceMm > 0 || state !== 'clear';
  const told = toleranceMm > 0 && (state === 'undecided' || toleranceMm <= heldToMm);
  const facts = { claimedMm: clearanceMm };
  return [
    ...(fits ? [] : [doubt('state', where, `"${state}" does not go with a clearance of ${clearanceMm} mm.`, facts)]),
    ...(told
      ? []
      : [doubt('tolerance', where, `"${state}" does not go with a tolerance of ${toleranceMm} mm.`, facts)]),
    ...((clearanceMm !== null) === sharesDepth
      ? []
      : [
          doubt(
            'shared-depth',
            where,
            `A clearance is ${sharesDepth ? 'missing, yet a' : 'given, yet no'} pair shares depth.`,
            facts,
          ),
        ]),
  ];
}

/** A worst clearance that no pair comes down to is wrong as well. */
function attainedDoubts({ where, worstClearanceMm: claimedMm }: Claim, foundMm: number | null): Doubt[] {
  if (claimedMm === undefined) return [];
  const attained = claimedMm === null || foundMm === null ? claimedMm === foundMm : claimedMm > foundMm - foundWithinMm;
  if (attained) return [];
  return [doubt('worst-clearance', where, `No pair comes down to ${claimedMm} mm at worst.`, { claimedMm, foundMm })];
}

/** A foul must be seen somewhere; "undecided" must have its cause. */
function causeDoubts(claim: Claim, seen: readonly PairGap[]): Doubt[] {
  const { where, state, fouling, toleranceMm } = claim;
  const leastOf = (untraced: boolean): number =>
    Math.min(...seen.filter(({ meeting }) => isUntraced(meeting) === untraced).map(({ gapMm }) => gapMm));
  if (state === 'fouls' && fouling === undefined && leastOf(false) > -overlapsMm) {
    return [doubt('no-overlap', where, 'It is said to foul, yet nothing overlaps.', { foundMm: leastOf(false) })];
  }
  if (state === 'undecided' && toleranceMm <= heldToMm && leastOf(true) > onOutlineMm) {
    const text = 'It is left undecided, yet nothing comes to where nobody traced.';
    return [doubt('untraced', where, text, { foundMm: leastOf(true) })];
  }
  return [];
}
