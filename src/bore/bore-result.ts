import { length, scale, type Vec } from '../geometry/plane/vec.ts';
import type { RunOutLimit } from '../trade/bore-run-out.ts';
import { areQuarters, type DialFit, type DialReading, fitDial } from './dial-fit.ts';
import { type OffsetDowels, offsetDowelsFor } from './offset-dowels.ts';

/** Once round with the dial; `againMm` is the first place read again at the end, null where it was not. */
export interface DialRound {
  readonly readings: readonly DialReading[];
  readonly againMm: number | null;
}

/** A flange's number where the limit is of a standard flange, which has its face held to it too. */
export interface BoreLimit extends RunOutLimit {
  readonly of: 'gearbox' | 'flange' | 'stated';
  readonly flange: string | null;
}

/** What was read of a bore, and of the face about it; mm. */
export interface BoreRequest {
  readonly bore: DialRound;
  readonly face: (DialRound & { readonly radiusMm: number }) | null;
  /** What droop alone would read at 6 o'clock in a true bore, nothing at 12. */
  readonly sagMm: number;
  readonly errorMm: number;
  readonly limit: BoreLimit;
}

export interface BoreRead extends DialFit {
  /** As they were read, and with what is sag taken off. */
  readonly readings: readonly (DialReading & { readonly trueMm: number })[];
  /** The last reading less the first of the same place. */
  readonly closureMm: number | null;
  readonly closes: boolean;
}

export interface FaceRead extends BoreRead {
  readonly radiusMm: number;
  /** Rise over run of the face, and its bound; `once` points to where it stands out most. */
  readonly slope: number;
  readonly slopeBound: number;
}

/** What keeps a bore from being told in line or out of it. */
export type BoreDoubt =
  | 'bore-not-closing'
  | 'face-not-closing'
  | 'bore-noise'
  | 'face-noise'
  | 'bore-too-near'
  | 'face-too-near'
  | 'out-of-round'
  | 'face-not-flat';

/** A figure known within bounds against its limit: on one side wholly, or not to be told. */
export type AgainstLimit = 'within' | 'beyond' | 'noise' | 'too-near';

export interface BoreResult {
  readonly verdict: 'good' | 'not' | 'undecided';
  readonly against: readonly ('off-centre' | 'face-tilted')[];
  readonly doubts: readonly BoreDoubt[];
  readonly request: BoreRequest;
  readonly bore: BoreRead;
  /** Of the bore's centre from the crank, seen looking at the block's face, y up. */
  readonly offset: Vec;
  readonly offMm: number;
  /** How the offset stands to its limit, its bound with it. */
  readonly centre: AgainstLimit;
  /** Half of what the rule allows as full indicator movement. */
  readonly limitMm: number;
  /** First and third place of four quarters added up, less second and fourth: 0 for a round bore; null of other places. */
  readonly sumsDifferMm: number | null;
  /** The widest diameter less the narrowest, with its bound; null where the places do not tell. */
  readonly outOfRound: { readonly mm: number; readonly boundMm: number } | null;
  readonly dowels: OffsetDowels;
  readonly face: FaceRead | null;
}

const hairMm = 1e-9;

/**
 * A bore against the crank by a dial that the crank carries: in a round bore whose centre lies off by e the dial reads
 * c − e·u in direction u, to the second order of e, so the centre lies away from where it reads most.
 */
export function alignBore(request: BoreRequest): BoreResult {
  const { limit, errorMm, sagMm } = request;
  const bore = readRound(request.bore, errorMm, sagMm);
  const face = request.face && faceRead(request.face, errorMm);
  const offMm = length(bore.once);
  const limitMm = limit.tirMm / 2;
  const outOfRound = bore.twice && { mm: 4 * bore.twice.sizeMm, boundMm: 4 * bore.twice.boundMm };
  const isBeyond = Math.max(bore.tirMm, outOfRound?.mm ?? 0) > limit.tirMm + hairMm;
  const centre = against(offMm, bore.onceBoundMm, limitMm);
  const isJudged = face !== null && limit.of === 'flange';
  const square = isJudged ? against(length(face.once), face.onceBoundMm, limitMm) : 'within';
  const found = {
    against: [
      ...only('off-centre' as const, centre === 'beyond'),
      ...only('face-tilted' as const, square === 'beyond'),
    ],
    doubts: [
      ...only('bore-not-closing' as const, !bore.closes),
      ...only('face-not-closing' as const, face?.closes === false),
      ...(centre === 'noise' || centre === 'too-near' ? [`bore-${centre}` as const] : []),
      ...(square === 'noise' || square === 'too-near' ? [`face-${square}` as const] : []),
      ...only('out-of-round' as const, centre !== 'beyond' && isBeyond),
      ...only('face-not-flat' as const, isJudged && square !== 'beyond' && face.tirMm > limit.tirMm + hairMm),
    ],
  };
  return {
    verdict: verdictOf(found),
    ...found,
    request,
    bore,
    offset: scale(bore.once, -1),
    offMm,
    centre,
    limitMm,
    sumsDifferMm: sumsDiffer(bore),
    outOfRound,
    dowels: offsetDowelsFor(offMm, bore.onceBoundMm, limitMm),
    face,
  };
}

const only = <T>(code: T, holds: boolean): T[] => (holds ? [code] : []);

function against(mm: number, boundMm: number, limitMm: number): AgainstLimit {
  if (mm + boundMm <= limitMm + hairMm) return 'within';
  if (mm - boundMm > limitMm + hairMm) return 'beyond';
  return boundMm > limitMm ? 'noise' : 'too-near';
}

/** Readings that do not close say nothing of anything. */
function verdictOf({ against, doubts }: Pick<BoreResult, 'against' | 'doubts'>): BoreResult['verdict'] {
  if (doubts.includes('bore-not-closing') || doubts.includes('face-not-closing')) return 'undecided';
  if (against.length > 0) return 'not';
  return doubts.length > 0 ? 'undecided' : 'good';
}

/** What droop alone reads: nothing at 12 o'clock, half at 3 and 9, all of it at 6. */
const sagAt = (sagMm: number, angleRad: number): number => (sagMm * (1 - Math.sin(angleRad))) / 2;

function readRound({ readings, againMm }: DialRound, errorMm: number, sagMm: number): BoreRead {
  const corrected = readings.map((reading) => ({
    ...reading,
    trueMm: reading.readMm - sagAt(sagMm, reading.angleRad),
  }));
  const fit = fitDial(
    corrected.map(({ angleRad, trueMm }) => ({ angleRad, readMm: trueMm })),
    errorMm,
  );
  const closureMm = againMm === null ? null : againMm - (readings[0]?.readMm ?? 0);
  return {
    ...fit,
    readings: corrected,
    closureMm,
    // each of the two may err
    closes: Math.abs(closureMm ?? 0) <= 2 * errorMm + hairMm,
  };
}

function faceRead(face: DialRound & { readonly radiusMm: number }, errorMm: number): FaceRead {
  const read = readRound(face, errorMm, 0);
  const { radiusMm } = face;
  return { ...read, radiusMm, slope: length(read.once) / radiusMm, slopeBound: read.onceBoundMm / radiusMm };
}

function sumsDiffer({ readings }: BoreRead): number | null {
  if (!areQuarters(readings.map(({ angleRad }) => angleRad))) return null;
  const first = readings[0]?.angleRad ?? 0;
  return readings.reduce((sum, { angleRad, trueMm }) => sum + trueMm * Math.sign(Math.cos(2 * (angleRad - first))), 0);
}
