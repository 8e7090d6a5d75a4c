import type { State } from '../model/check-answer.ts';
import type { Doubt, DoubtCode } from './verify-doubt.ts';
import { roundingMm } from './verify-dowels.ts';
import { type Found, type Looks, leastGap } from './verify-look.ts';
import type { Meeting, Solid } from './verify-solids.ts';
import { pathMm, type Stretch } from './verify-way.ts';

/** What an answer says of home, of the way in or of one rotating part; mm. */
export interface Claim {
  readonly where: Doubt['where'];
  readonly state: State;
  readonly clearanceMm: number | null;
  readonly toleranceMm: number;
  /** Undefined where the answer does not give it. */
  readonly worstClearanceMm?: number | null;
  readonly askedMm: number;
  /** Stretches on which a pair is said to foul; undefined where the answer does not list them. */
  readonly fouling?: readonly FoulStretch[];
}

export interface FoulStretch {
  readonly leg: number;
  readonly fixedSection: string;
  readonly movingSection: string;
  readonly fromAt: number;
  readonly toAt: number;
}

/** What was found of a claim. */
export interface ClaimFound {
  readonly doubts: readonly Doubt[];
  /** The least over pairs of its gap less its tracing error, as far as found; null where no pair shares depth. */
  readonly worstMm: number | null;
}

/** An answer known no better than this is undecided. */
const undecidedMm = 1e-3;

/** Metal this deep in other metal overlaps for certain; less may be called touching. */
const overlapMm = 1e-5;

/** How exactly a figure that no witness bears out is found again. */
const attainedMm = 0.01;

export const errorMm = ({ fixedSolid, movingSolid }: Meeting, placeErrorsMm: readonly number[]): number =>
  fixedSolid.traceErrorMm + movingSolid.traceErrorMm + placeErrorsMm.reduce((sum, e) => sum + e, 0);

/** Looks at every pair that shares depth for something nearer than claimed, and for the overlap that is claimed. */
export function lookInto(
  claim: Claim,
  meetings: readonly Meeting[],
  placeErrorsMm: readonly number[],
  looks: Looks,
  mostLooks: number,
): ClaimFound {
  const seen = meetings.map((meeting) => {
    const error = errorMm(meeting, placeErrorsMm);
    return { meeting, error, ...lookAt(claim, meeting, error, looks, mostLooks / meetings.length) };
  });
  const counting = seen.filter(({ meeting, gapMm }) => !isUntraced(meeting) || gapMm < claim.askedMm);
  const worstMm =
    counting.length === 0 ? null : Math.min(...counting.map(({ gapMm, error }) => Math.max(0, gapMm) - error));
  return {
    worstMm,
    doubts: [
      ...ownFigureDoubts(claim, counting.length > 0),
      ...gravest(seen.flatMap(({ doubts }) => doubts)),
      ...attainedDoubts(claim, worstMm),
      ...causeDoubts(claim, seen),
    ],
  };
}

interface Seen {
  readonly meeting: Meeting;
  readonly gapMm: number;
}

const isUntraced = ({ fixedSolid, movingSolid }: Meeting): boolean => fixedSolid.untraced || movingSolid.untraced;

/** What a claim's figures say of one another. */
function ownFigureDoubts(claim: Claim, sharesDepth: boolean): Doubt[] {
  const { state, clearanceMm, toleranceMm } = claim;
  const doubts: Doubt[] = [];
  const doubt = (what: DoubtCode, text: string): void => {
    doubts.push({ what, where: claim.where, text, claimedMm: clearanceMm, foundMm: null });
  };
  const meets = state === 'fouls' || state === 'touches';
  if (meets && clearanceMm !== 0) doubt('state', `It is said to be "${state}", yet the clearance is not 0.`);
  if (state === 'clear' && clearanceMm !== null && clearanceMm <= toleranceMm - roundingMm) {
    doubt('state', 'It is said to be clear, yet the clearance is within its own tolerance.');
  }
  if (toleranceMm <= 0 || (state !== 'undecided' && toleranceMm > undecidedMm)) {
    doubt('tolerance', `A tolerance of ${toleranceMm} mm does not go with "${state}".`);
  }
  if (clearanceMm === null && sharesDepth) doubt('depth-shared', 'No pair is said to share depth, yet one does.');
  if (clearanceMm !== null && !sharesDepth)
    doubt('depth-never-shared', 'A clearance is given, yet no pair shares depth.');
  return doubts;
}

/** The least gap found of a pair, and what that says against the claim. */
function lookAt(
  claim: Claim,
  meeting: Meeting,
  error: number,
  looks: Looks,
  mostLooks: number,
): { readonly gapMm: number; readonly doubts: readonly Doubt[] } {
  const claimed = (claim.fouling ?? []).filter((foul) => isOf(foul, meeting));
  const free = without(meeting.stretch, claimed);
  const floor = floorMm(claim, meeting);
  const worst = worstFloorMm(claim, error);
  const target = Math.max(floor, claimed.length > 0 ? -Infinity : worst, 0);
  const found = free.map((stretch) => leastGap(meeting, stretch, target, looks, mostLooks / free.length));
  const least = found.reduce((a, b) => (b.gapMm < a.gapMm ? b : a), { gapMm: Infinity, at: 0, place: { x: 0, y: 0 } });
  const gapMm = claimed.length > 0 ? Math.min(0, least.gapMm) : least.gapMm;
  return {
    gapMm,
    doubts: [...floorDoubts(claim, meeting, floor, least), ...worstDoubts(claim, meeting, worst, { ...least, gapMm })],
  };
}

const isOf = (foul: FoulStretch, { leg, fixedSolid, movingSolid }: Meeting): boolean =>
  foul.leg === leg && foul.fixedSection === fixedSolid.name && foul.movingSection === movingSolid.name;

/** What is left of a stretch between those on which a pair fouls. */
function without(stretch: Stretch, fouling: readonly FoulStretch[]): Stretch[] {
  const ends = [
    stretch.from,
    ...fouling.toSorted((a, b) => a.fromAt - b.fromAt).flatMap((f) => [f.fromAt, f.toAt]),
    stretch.to,
  ];
  const pairs = Array.from({ length: ends.length / 2 }, (_, i) => ({
    from: ends[2 * i] as number,
    to: ends[2 * i + 1] as number,
  }));
  return fouling.length === 0 ? pairs : pairs.filter(({ from, to }) => to - from > 1e-6);
}

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
      if (isUntraced(meeting)) return -Infinity;
      return toleranceMm > undecidedMm && clearanceMm === 0 ? -Infinity : (clearanceMm ?? 0);
  }
}

/** The gap at which a pair's error would take it below the worst clearance claimed. */
const worstFloorMm = ({ worstClearanceMm }: Claim, error: number): number =>
  worstClearanceMm === undefined || worstClearanceMm === null ? -Infinity : worstClearanceMm + error;

function floorDoubts(claim: Claim, meeting: Meeting, floor: number, found: Found): Doubt[] {
  const given = claim.toleranceMm + roundingMm;
  // an instant is rounded too, and metal goes on moving while it is
  const slack = floor > 0 ? given : given + overlapMm + 1e-6 * pathMm(meeting.way, found.place);
  if (found.gapMm >= floor - slack) return [];
  const what = isUntraced(meeting) ? 'untraced' : floor > 0 ? 'nearer' : 'overlap-outside';
  return [doubtOf(what, claim, meeting, floor, found, `${floor} mm is claimed; ${found.gapMm} mm was found`)];
}

function worstDoubts(claim: Claim, meeting: Meeting, worst: number, found: Found): Doubt[] {
  const counts = !isUntraced(meeting) || found.gapMm < claim.askedMm;
  const gapMm = Math.max(0, found.gapMm);
  if (!counts || gapMm >= worst - claim.toleranceMm - roundingMm) return [];
  const text = `Its error leaves less than the worst clearance claimed: the gap may not be under ${worst} mm, and is ${gapMm} mm`;
  return [doubtOf('worst-clearance', claim, meeting, worst, { ...found, gapMm }, text)];
}

function doubtOf(
  what: DoubtCode,
  claim: Claim,
  meeting: Meeting,
  claimedMm: number,
  found: Found,
  text: string,
): Doubt {
  return {
    what,
    where: claim.where,
    text: `${pairName(meeting.fixedSolid, meeting.movingSolid)}${whenText(meeting.leg, found.at)}: ${text}.`,
    claimedMm,
    foundMm: found.gapMm,
    at: [found.place.x, found.place.y],
  };
}

export const pairName = (fixed: Pick<Solid, 'name'>, moving: Pick<Solid, 'name'>): string =>
  `"${fixed.name}" and "${moving.name}"`;

const whenText = (leg: number | null, at: number): string => (leg === null ? ' at home' : ` on leg ${leg} at ${at}`);

/** Of doubts that say the same of several pairs, the one that is farthest out. */
function gravest(doubts: readonly Doubt[]): Doubt[] {
  const short = ({ claimedMm, foundMm }: Doubt): number => (claimedMm ?? 0) - (foundMm ?? 0);
  const codes = [...new Set(doubts.map(({ what }) => what))];
  return codes.map((code) =>
    doubts.filter(({ what }) => what === code).reduce((a, b) => (short(b) > short(a) ? b : a)),
  );
}

/** A worst clearance that no pair comes down to is wrong as well. */
function attainedDoubts({ where, worstClearanceMm }: Claim, foundMm: number | null): Doubt[] {
  if (worstClearanceMm === undefined) return [];
  const same =
    worstClearanceMm === null || foundMm === null
      ? worstClearanceMm === foundMm
      : worstClearanceMm > foundMm - attainedMm;
  if (same) return [];
  const text = `The worst clearance is given as ${worstClearanceMm} mm, and found to be ${foundMm} mm.`;
  return [{ what: 'worst-clearance', where, text, claimedMm: worstClearanceMm, foundMm }];
}

/** A foul must be seen somewhere; "undecided" must have its cause. */
function causeDoubts(claim: Claim, seen: readonly Seen[]): Doubt[] {
  const least = (untraced: boolean): number =>
    Math.min(...seen.filter(({ meeting }) => isUntraced(meeting) === untraced).map(({ gapMm }) => gapMm));
  const doubt = (what: DoubtCode, foundMm: number, text: string): Doubt[] => [
    { what, where: claim.where, text, claimedMm: claim.clearanceMm, foundMm },
  ];
  if (claim.state === 'fouls' && claim.fouling === undefined && least(false) > -1e-7) {
    return doubt('no-overlap', least(false), 'It is said to foul, yet no two sections were found to overlap.');
  }
  if (claim.state === 'undecided' && claim.toleranceMm <= undecidedMm && least(true) > overlapMm) {
    return doubt(
      'undecided-without-cause',
      least(true),
      'It is left undecided, yet nothing comes to where nobody traced.',
    );
  }
  return [];
}
