import type { ReasonCode } from '../clearance/notices.ts';
import { placeErrors } from '../clearance/pairs.ts';
import { atHome, waysOf } from '../clearance/passings.ts';
import { reasonOf, reasonsBeforehand } from '../clearance/reasons.ts';
import { standingForTurning, turningRule } from '../clearance/rotating.ts';
import type { DepthView } from '../clearance/shared-depth.ts';
import { sidesOf } from '../clearance/solids.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import { depthBreaks, farDepthMm } from './depth-breaks.ts';
import { type RoomLimit, roomAt, type Standing } from './room-at.ts';

/** A range of depth told as that of a part which turns: from the fixed face, negative out of it; null without end, mm. */
export interface OpenDepth {
  readonly fromMm: number | null;
  readonly toMm: number | null;
}

export interface RoomRange {
  readonly depth: OpenDepth;
  /** The largest radius about the axis, mm; null where nothing limits it. */
  readonly radiusMm: number | null;
  /** The metal that leaves no more, outermost first; none where nothing limits. */
  readonly limits: readonly RoomLimit[];
}

/** The room about the crank axis, from the outermost depth inward. */
export interface RoomResult {
  /** Why nothing is told; null where something is. */
  readonly reason: ReasonCode | null;
  readonly rotatingMm: number;
  /** Whether no way in is stated, so that only what stands at home limits. */
  readonly homeOnly: boolean;
  /** For the outlines as traced. */
  readonly ranges: readonly RoomRange[];
  /** With every error of outline, place and depth against the builder. */
  readonly worstRanges: readonly RoomRange[];
}

/**
 * The largest body turning about the crank axis that keeps the rotating clearance from both castings, at home and at
 * every instant of the way in; by depth. A disc of that radius over that depth is held by the check, a larger one is not.
 */
export function* roomOnCrank(joint: Joint): Generator<Progress, RoomResult> {
  const { fit } = joint;
  const reason = reasonOf(joint, reasonsBeforehand(joint));
  const told = { reason, rotatingMm: fit.clearance.rotatingMm, homeOnly: fit.legs.length === 0 };
  if (reason !== null) return { ...told, ranges: [], worstRanges: [] };
  const standings = standingsOf(joint);
  const ranges = yield* rangesOf(standings, told.rotatingMm, 'as-measured');
  const worstRanges = yield* rangesOf(standings, told.rotatingMm, 'at-worst');
  return { ...told, ranges, worstRanges };
}

function standingsOf(joint: Joint): Standing[] {
  const { fixed, moving } = sidesOf(joint);
  return [
    {
      part: 'moving',
      solids: moving,
      ways: [atHome, ...waysOf(joint.fit.legs)],
      rule: turningRule(joint, placeErrors(joint)),
    },
    { part: 'fixed', solids: standingForTurning(fixed), ways: [atHome], rule: turningRule(joint, []) },
  ];
}

function* rangesOf(
  standings: readonly Standing[],
  clearanceMm: number,
  view: DepthView,
): Generator<Progress, RoomRange[]> {
  const breaks = depthBreaks(standings, view);
  const found: RoomRange[] = [];
  for (let i = 1; i < breaks.length; i += 1) {
    yield { step: view === 'at-worst' ? 'the room at worst' : 'the room', done: i - 1, of: breaks.length - 1 };
    const depth = { fromMm: breaks[i - 1] as number, toMm: breaks[i] as number };
    const { radiusMm, limit } = roomAt(depth, standings, clearanceMm, view);
    found.push({ depth: opened(depth), radiusMm, limits: limit === null ? [] : [limit] });
  }
  return joined(found);
}

const opened = ({ fromMm, toMm }: { readonly fromMm: number; readonly toMm: number }): OpenDepth => ({
  fromMm: fromMm <= -farDepthMm ? null : fromMm,
  toMm: toMm >= farDepthMm ? null : toMm,
});

/** What differs by less is the kernel's own rounding, mm. */
const sameRadiusMm = 1e-6;

/** Neighbours in which there is the same room are one range. */
function joined(ranges: readonly RoomRange[]): RoomRange[] {
  const merged: RoomRange[] = [];
  for (const range of ranges) {
    const last = merged.at(-1);
    if (last === undefined || !isSame(last.radiusMm, range.radiusMm)) merged.push(range);
    else merged[merged.length - 1] = both(last, range);
  }
  return merged;
}

const isSame = (a: number | null, b: number | null): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= sameRadiusMm;

const both = (last: RoomRange, range: RoomRange): RoomRange => ({
  depth: { fromMm: last.depth.fromMm, toMm: range.depth.toMm },
  radiusMm: last.radiusMm === null || range.radiusMm === null ? null : Math.min(last.radiusMm, range.radiusMm),
  limits: [...last.limits, ...range.limits.filter((limit) => !last.limits.some((told) => isSameMetal(told, limit)))],
});

const isSameMetal = (a: RoomLimit, b: RoomLimit): boolean => a.part === b.part && a.section === b.section;
