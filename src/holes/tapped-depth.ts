import type { Source } from '../trade/sourced.ts';
import { drillPointMm, engagementIn, tappedDepth } from '../trade/thread-engagement.ts';
import type { ThreadData } from './thread-data.ts';

/** How deep a blind hole is drilled with one kind of tap, mm: to the shoulder of the drill, and to its tip. */
export interface BlindDepth {
  readonly shoulderMm: number;
  readonly tipMm: number;
}

/** The length a thread is to engage, and what it asks of a blind hole; mm. */
export interface EngagementResult {
  readonly wantedMm: number;
  /** Advised for the material; null where none is named, and for pipe threads. */
  readonly advisedMm: number | null;
  readonly advisedTimesMajor: number | null;
  readonly advisedSource: Source | null;
  /** Full threads to cut: the engagement and two pitches. */
  readonly fullThreadMm: number;
  readonly secondTap: BlindDepth;
  readonly bottomingTap: BlindDepth;
}

export interface EngagementAsked {
  readonly thread: ThreadData;
  readonly material: string | null;
  readonly engagementMm: number | null;
}

/**
 * The engagement asked for, else the one advised for the material, else the useful length of a taper thread; null
 * where nothing says how long it is to be.
 */
export function engagementFor({ thread, material, engagementMm }: EngagementAsked): EngagementResult | null {
  const carries = thread.stressAreaMm2 !== null;
  const advised = material === null || !carries ? null : engagementIn(material);
  const advisedMm = advised === null ? null : advised.timesMajor * thread.majorMm;
  const wantedMm = engagementMm ?? advisedMm ?? thread.usefulLengthMm;
  if (wantedMm === null) return null;
  const fullThreadMm = wantedMm + tappedDepth.spareThreads * thread.pitchMm;
  const blind = (leadThreads: number): BlindDepth => {
    const shoulderMm = fullThreadMm + leadThreads * thread.pitchMm;
    return { shoulderMm, tipMm: shoulderMm + drillPointMm(thread.drill.diameterMm) };
  };
  return {
    wantedMm,
    advisedMm,
    advisedTimesMajor: advised?.timesMajor ?? null,
    advisedSource: advised?.source ?? null,
    fullThreadMm,
    secondTap: blind(tappedDepth.secondTapLead),
    bottomingTap: blind(tappedDepth.bottomingTapLead),
  };
}

/** The engagement (mm) that is to be had of a blind hole so deep to its shoulder, with a bottoming tap; 0 at least. */
export const engagementWithinMm = ({ pitchMm }: ThreadData, depthMm: number): number =>
  Math.max(0, depthMm - (tappedDepth.spareThreads + tappedDepth.bottomingTapLead) * pitchMm);
