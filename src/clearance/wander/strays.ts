import { distance, length } from '../../geometry/plane/vec.ts';
import type { Leg } from '../../job/path.ts';
import type { Wander } from '../../job/wander.ts';
import type { Joint } from '../../joint/joint.ts';
import { guidedByDowelsMm } from '../../joint/path-notices.ts';
import { passings, type Sides, waysOf } from '../passings.ts';
import type { DepthRule, DepthView } from '../shared-depth.ts';
import type { Solid } from '../solids.ts';
import { type Lever, leverOf, type Strayed, strayedOn, untracedLever } from './strayed.ts';

/** Two solids as they may pass while one strays from a leg. */
export interface Stray extends Strayed {
  readonly fixed: Solid;
  readonly moving: Solid;
  /** Counts from 1. */
  readonly leg: number;
}

/** Every two that may share depth, leg by leg, while one strays no farther from the way in than a wander. */
export function* strays(
  joint: Joint,
  wander: Wander,
  sides: Sides<Solid>,
  depth: DepthRule,
  view: DepthView,
): Generator<Stray> {
  const { legs, dowels } = joint.fit;
  const rule = { wander, depth, guidedMm: guidedByDowelsMm(dowels) };
  const levers = new Map(sides.moving.map((solid) => [solid, leverOfSolid(joint, solid, wander)]));
  for (const { fixed, moving, leg, count } of passings(sides, waysOf(legs))) {
    if (fixed.untraced && moving.untraced) continue;
    const strayed = strayedOn(fixed, moving, levers.get(moving) as Lever, leg, rule, view);
    if (strayed !== null) yield { fixed, moving, leg: count ?? 0, ...strayed };
  }
}

function leverOfSolid(joint: Joint, { name, untraced, depth }: Solid, wander: Wander): Lever {
  if (untraced) return untracedLever(depth, reachOfWhatMeetsMm(joint, wander), wander.tiltRad);
  return leverOf(joint.moving.sections.find(({ id }) => id === name)?.loops ?? [], depth);
}

/** No farther from the axis does metal stand that comes as near to the other part as is asked, mm. */
function reachOfWhatMeetsMm({ fixed, rotating, fit }: Joint, { shiftMm }: Wander): number {
  const loops = [fixed, ...rotating].flatMap(({ sections }) => sections.flatMap((section) => section.loops));
  const asideMm = Math.max(0, ...fit.legs.map(farthestAsideMm));
  const askedMm = Math.max(fit.clearance.wayInMm, fit.clearance.rotatingMm);
  return leverOf(loops, null).reachMm + askedMm + shiftMm + asideMm;
}

/** No farther from home does a leg carry the axis of the moving part, mm. */
function farthestAsideMm({ from, to, motion }: Leg): number {
  if (motion.kind === 'slide') return Math.max(length(from.shift), length(to.shift));
  return length(motion.pole) + distance(motion.pole, from.shift);
}
