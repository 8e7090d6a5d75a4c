import { circleLoop, type Region } from '../../geometry/plane/loop.ts';
import type { Casting, DepthRange, Hole } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import { parseThread } from '../../trade/threads.ts';

/** Room in a part that no cut may come too near: a hollow behind the metal, or a hole. */
export interface Guard {
  readonly id: string;
  readonly kind: 'hollow' | 'hole';
  readonly loops: Region;
  /** Null reaches through every depth. */
  readonly depth: DepthRange | null;
  /** Whether that was only taken, because a hole's depth is not stated. */
  readonly isDepthAssumed: boolean;
  /** The wall to keep, mm; null where none was set: then no cut may break in. */
  readonly keepMm: number | null;
  readonly keepBy: KeepBy | null;
  readonly traceErrorMm: number;
}

/** What sets the wall to keep: the part's own figure or the fit's, the larger; of a hole with neither, half its diameter. */
export type KeepBy = 'stated' | 'half-diameter';

/** How well the place of a hole is known: measured by caliper; common practice, no source. */
const holeErrorMm = 0.15;

/** Everything of a part that is guarded: hollows, and holes whose size is known, but for those that a cut may break into. */
export const guardsOf = ({ hollows, holes }: Pick<Casting, 'hollows' | 'holes'>, fit: Fit): Guard[] => [
  ...hollows.map((hollow): Guard => {
    const keepMm = larger(hollow.keepWallMm, fit.minWallMm);
    const keepBy = keepMm === null ? null : 'stated';
    return { ...hollow, kind: 'hollow', isDepthAssumed: false, keepMm, keepBy };
  }),
  ...holes.flatMap((hole) => guardedHole(hole, fit) ?? []),
];

function guardedHole(hole: Hole, fit: Fit): Guard | null {
  const diameterMm = holeDiameterMm(hole);
  if (hole.mayBreak || diameterMm === null) return null;
  const stated = larger(hole.keepWallMm, fit.minWallMm);
  return {
    id: hole.id,
    kind: 'hole',
    loops: [circleLoop(hole.at, diameterMm / 2)],
    depth: hole.depth,
    isDepthAssumed: hole.depth === null,
    keepMm: stated ?? diameterMm / 2,
    keepBy: stated === null ? 'half-diameter' : 'stated',
    traceErrorMm: holeErrorMm,
  };
}

/** The room a hole takes: its diameter or the major diameter of its thread, the larger, mm; null where neither is known. */
export function holeDiameterMm({ diameterMm, thread }: Hole): number | null {
  return larger(diameterMm, thread === null ? null : (parseThread(thread)?.majorMm ?? null));
}

function larger(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.max(a, b);
}
