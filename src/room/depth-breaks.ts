import { distinctDepths } from '../clearance/distinct-depths.ts';
import type { Way } from '../clearance/passings.ts';
import { type DepthView, isStretch, reachOf } from '../clearance/shared-depth.ts';
import { isMotionless } from '../geometry/motion/motion.ts';
import type { Standing } from './room-at.ts';

/** Beyond every depth a job can hold, mm. */
export const farDepthMm = 1e6;

/** Where room changes along the crank because a leg goes aside and inward at once, it is told by steps, mm. */
const stepMm = 2;
const mostSteps = 50;

/**
 * The depths (mm, as of a part that turns) at which metal begins or ceases to be met, in order, without end on either
 * side: between two neighbours the room is one. Metal that goes aside and along the crank at once leaves room that
 * changes all the way, which is parted into steps.
 */
export function depthBreaks(standings: readonly Standing[], view: DepthView): number[] {
  const breaks = standings.flatMap(({ solids, ways, rule }) =>
    solids.flatMap((solid) => {
      if (!isStretch(solid)) return [];
      const reach = reachOf(solid, nothing, rule.depth, view);
      return ways.flatMap((way) => [...endsOn(way, reach.fromMm), ...endsOn(way, reach.toMm), ...stepsOn(way, reach)]);
    }),
  );
  return distinctDepths([-farDepthMm, ...breaks, farDepthMm]);
}

/** What turns: its ends are no mating faces, and its depths are without error. */
const nothing = {
  depth: { fromMm: -farDepthMm, toMm: farDepthMm },
  whole: { fromMm: -farDepthMm, toMm: farDepthMm },
  depthErrorMm: 0,
};

/** Moving metal at depth d stands at z = stand-off + d, what turns at z = −depth. */
const endsOn = ({ leg: { from, to } }: Way, mm: number): number[] => [-from.standOffMm - mm, -to.standOffMm - mm];

function stepsOn(way: Way, reach: { readonly fromMm: number; readonly toMm: number }): number[] {
  const { from, to, motion } = way.leg;
  const turnsOnAxis =
    motion.kind === 'turn' && Math.hypot(motion.pole.x, motion.pole.y, from.shift.x, from.shift.y) === 0;
  if (from.standOffMm === to.standOffMm || isMotionless(motion) || turnsOnAxis) return [];
  const ends = [...endsOn(way, reach.fromMm), ...endsOn(way, reach.toMm)];
  const [lowMm, highMm] = [Math.min(...ends), Math.max(...ends)];
  const steps = Math.min(mostSteps, Math.ceil((highMm - lowMm) / stepMm));
  return Array.from({ length: steps }, (_, i) => lowMm + ((highMm - lowMm) * i) / steps);
}
