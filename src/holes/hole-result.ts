import { type ClearanceHole, clearanceHoleFor } from '../trade/clearance-holes.ts';
import type { Drill } from '../trade/inch-drills.ts';
import { type DrillAtHand, type DrilledThread, drillAtHand, drilledThread } from './drilled-thread.ts';
import { type EnlargingResult, enlargingOf } from './enlarging.ts';
import { type EngagementResult, engagementFor, engagementWithinMm } from './tapped-depth.ts';
import type { ThreadData } from './thread-data.ts';
import { type MetalThere, type StrayResult, strayWithin, type WallResult, wallOf } from './wall.ts';

/** What is asked of a tapped hole, mm; null where nothing is said of it. */
export interface HoleRequest extends MetalThere {
  readonly thread: ThreadData;
  /** The thread that is there already. */
  readonly was: ThreadData | null;
  /** By its name in `materials`. */
  readonly material: string | null;
  readonly engagementMm: number | null;
  /** How deep it is drilled, or may be, to the shoulder. */
  readonly depthMm: number | null;
  /** The drills in the box. */
  readonly have: readonly Drill[] | null;
}

/** What stands against a tapped hole as it is asked for. */
export type AgainstHole = 'wall-too-thin' | 'too-shallow' | 'no-drill-at-hand';

export interface HoleResult {
  readonly thread: ThreadData;
  readonly material: string | null;
  readonly drilled: DrilledThread;
  readonly clearance: ClearanceHole | null;
  readonly atHand: DrillAtHand | null;
  readonly engagement: EngagementResult | null;
  readonly depthMm: number | null;
  /** What engages in a hole so deep, with a bottoming tap; null where no depth is given. */
  readonly engagementWithinMm: number | null;
  readonly wall: WallResult | null;
  readonly stray: StrayResult | null;
  readonly enlarging: EnlargingResult | null;
  readonly against: readonly AgainstHole[];
}

const hairMm = 1e-9;

/** All there is to say of a tapped hole: the drill, its depth, its wall, and what becomes of the thread that was there. */
export function holeFor(asked: HoleRequest): HoleResult {
  const { thread, was, material, depthMm, have } = asked;
  const engagement = engagementFor(asked);
  const wall = wallOf(asked, thread, was);
  const atHand = have === null ? null : drillAtHand(thread, have);
  const withinMm = depthMm === null ? null : engagementWithinMm(thread, depthMm);
  return {
    thread,
    material,
    drilled: drilledThread(thread, thread.drill),
    clearance: thread.system === 'metric' ? clearanceHoleFor(thread.majorMm) : null,
    atHand,
    engagement,
    depthMm,
    engagementWithinMm: withinMm,
    wall,
    stray: wall && strayWithin(wall, depthMm ?? engagement?.secondTap.shoulderMm ?? null),
    enlarging: was && enlargingOf(thread, was, asked, material),
    against: [
      ...(wall !== null && wall.afterMm < wall.keepMm - hairMm ? (['wall-too-thin'] as const) : []),
      ...(engagement !== null && withinMm !== null && withinMm < engagement.wantedMm - hairMm
        ? (['too-shallow'] as const)
        : []),
      ...(have !== null && atHand?.verdict !== 'does' ? (['no-drill-at-hand'] as const) : []),
    ],
  };
}
