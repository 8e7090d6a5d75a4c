import { stateOf } from '../clearance/measure.ts';
import { fractionOfLeg, type PairPassage, type PairRule, pairsOn } from '../clearance/pairs.ts';
import type { Way } from '../clearance/passings.ts';
import type { DepthView } from '../clearance/shared-depth.ts';
import type { Solid } from '../clearance/solids.ts';
import { treeOf } from '../clearance/trees.ts';
import { greatestToleranceMm } from '../geometry/motion/tolerances.ts';
import { circleLoop, type Region } from '../geometry/plane/loop.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Part } from '../job/part.ts';

/** Metal of one part that may come near what turns, with the ways it goes and what it is judged by. */
export interface Standing {
  readonly part: Part;
  readonly solids: readonly Solid[];
  readonly ways: readonly Way[];
  readonly rule: PairRule;
}

/** The metal that leaves no more room, and when. */
export interface RoomLimit {
  readonly part: Part;
  readonly section: string;
  /** Metal that nobody has looked for may stand there. */
  readonly untraced: boolean;
  /** Counts from 1; null at home. */
  readonly leg: number | null;
  /** The fraction of that leg; 0 at home. */
  readonly at: number;
  /** The place of that metal then, in the joint frame, mm; null where it is on the axis itself. */
  readonly where: Vec | null;
}

/** The largest radius about the axis, mm; null where nothing limits it. */
interface Room {
  readonly radiusMm: number | null;
  readonly limit: RoomLimit | null;
}

/** What stands for the axis: a disc about it, mm; smaller costs digits, larger hides how near metal comes to it. */
const axisDiscMm = 1e-3;

const axisDisc: Region = [circleLoop(vec(0, 0), axisDiscMm)];

/**
 * The room there is about the axis over one range of depth (mm, as of a part that turns): as far as the nearest metal
 * that ever shares depth with it, less the clearance and, at worst, its errors. Never told too large.
 */
export function roomAt(depth: DepthRange, standings: readonly Standing[], clearanceMm: number, view: DepthView): Room {
  const fixed = [{ ...axisSolid, depth, whole: depth }];
  let least: Room = { radiusMm: null, limit: null };
  for (const { part, solids, ways, rule } of standings) {
    for (const pair of pairsOn({ fixed, moving: solids }, ways, rule)) {
      if (view === 'as-measured' && pair.view === 'at-worst') continue;
      const errorMm = view === 'at-worst' ? pair.errors.errorMm : 0;
      const radiusMm = Math.max(0, distanceToAxisMm(pair) - errorMm - clearanceMm);
      if (radiusMm < (least.radiusMm ?? Number.POSITIVE_INFINITY)) least = { radiusMm, limit: limitOf(part, pair) };
    }
  }
  return least;
}

const axisSolid = { name: 'axis', depthErrorMm: 0, tree: treeOf(axisDisc), traceErrorMm: 0, untraced: false };

/** What is proved of how far metal keeps from the axis; 0 where it stands on it, or may. */
function distanceToAxisMm(pair: PairPassage): number {
  const { distanceMm, toleranceMm } = pair.passage;
  if (stateOf(pair) !== 'clear' || toleranceMm > greatestToleranceMm) return 0;
  return distanceMm === null ? Number.POSITIVE_INFINITY : Math.max(0, distanceMm - toleranceMm) + axisDiscMm;
}

const limitOf = (part: Part, { moving, leg, fractions, passage }: PairPassage): RoomLimit => ({
  part,
  section: moving.name,
  untraced: moving.untraced,
  leg,
  at: leg === null ? 0 : fractionOfLeg(fractions, passage.nearest?.at ?? 0),
  where: passage.state === 'clear' ? (passage.nearest?.movingAt ?? null) : null,
});
