import { leastWallShare } from '../trade/thread-engagement.ts';
import type { ThreadData } from './thread-data.ts';

/** Metal beside a thread, counted from its major diameter; mm. */
export interface WallResult {
  /** Beside the thread that is there; null where there is none. */
  readonly beforeMm: number | null;
  readonly afterMm: number;
  readonly keepMm: number;
  /** False where `keepMm` is a third of the diameter, as practice has it, and nobody's wish. */
  readonly keepStated: boolean;
}

export interface MetalThere {
  /** The diameter of the boss about the hole. */
  readonly bossMm: number | null;
  /** Metal beside the thread as it is now: the one there is, else the one wanted. */
  readonly wallMm: number | null;
  readonly keepMm: number | null;
}

/** The wall to keep beside a thread: as stated, else a third of its diameter. */
export const keepFor = ({ keepMm }: MetalThere, majorMm: number): number => keepMm ?? leastWallShare * majorMm;

/**
 * Metal (mm) that a thread so large leaves, the hole where it is; below nothing where there is none. The less of what
 * boss and wall say; null where neither is known.
 */
export function wallBeside(metal: MetalThere, isNow: ThreadData, majorMm: number): number | null {
  const inBossMm = metal.bossMm === null ? null : (metal.bossMm - majorMm) / 2;
  const besideMm = metal.wallMm === null ? null : metal.wallMm - (majorMm - isNow.majorMm) / 2;
  return inBossMm === null || besideMm === null ? (inBossMm ?? besideMm) : Math.min(inBossMm, besideMm);
}

/** The wall before and after a thread is cut; null where nothing is known of the metal. */
export function wallOf(metal: MetalThere, thread: ThreadData, was: ThreadData | null): WallResult | null {
  const isNow = was ?? thread;
  const afterMm = wallBeside(metal, isNow, thread.majorMm);
  if (afterMm === null) return null;
  return {
    beforeMm: was === null ? null : wallBeside(metal, isNow, was.majorMm),
    afterMm,
    keepMm: keepFor(metal, thread.majorMm),
    keepStated: metal.keepMm !== null,
  };
}

/** How far a drill may go wrong; mm and radians. */
export interface Stray {
  /** Off the centre with no lean. */
  readonly offMm: number;
  /** Out of square with its mouth on the centre; null where the depth is not known. */
  readonly leanRad: number | null;
}

export interface StrayResult {
  readonly depthMm: number | null;
  readonly untilKeep: Stray;
  readonly untilGone: Stray;
}

/**
 * How far the drill may wander or lean until the wall is no more than is to be kept, and until it is gone: off by the
 * wall itself, or out of square by wall over depth. Both at once share that room: off + depth · tan(lean).
 */
export function strayWithin({ afterMm, keepMm }: WallResult, depthMm: number | null): StrayResult {
  const stray = (roomMm: number): Stray => {
    const offMm = Math.max(0, roomMm);
    return { offMm, leanRad: depthMm === null ? null : Math.atan(offMm / depthMm) };
  };
  return { depthMm, untilKeep: stray(afterMm - keepMm), untilGone: stray(afterMm) };
}
