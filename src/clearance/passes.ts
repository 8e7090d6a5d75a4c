import { type Motion, partOfMotion } from '../geometry/motion/motion.ts';
import { seenFromMoving } from '../geometry/motion/seen-from-moving.ts';
import { type Rigid, rigid } from '../geometry/plane/rigid.ts';
import type { DepthRange, Section } from '../job/casting.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Leg } from '../job/path.ts';
import type { Wander } from '../job/wander.ts';
import type { Joint } from '../joint/joint.ts';
import { guidedByDowelsMm } from '../joint/path-notices.ts';
import { atHome, matingRule, meetings, metalOf, type Way, waysOf } from './passings.ts';
import { type DepthView, isStretch, reachOf, type Stretch, sharedStandOffs, stretchOf } from './shared-depth.ts';
import { leastBandMm } from './tolerances.ts';
import { exactPart, leverOf, strayedOn } from './wander/strayed.ts';

/**
 * A section of the other part as it passes: standing at home (`leg` null), or over the stretch of one leg on which it
 * shares the depth looked at. `start` and `motion` place its outline in the frame of the part it passes.
 */
export interface Pass {
  readonly section: Section;
  /** Counts from 1. */
  readonly leg: number | null;
  readonly start: Rigid;
  readonly motion: Motion;
  /** How much nearer one comes who strays from the way in, mm; 0 on the way itself. */
  readonly strayMm: number;
  /** Whether it does pass there, or only may as far as is proved. */
  readonly isSure: boolean;
}

/**
 * What passes a band of a section's depth: the sections of the other part that share depth with any of it, at home
 * and on each leg. Sharing is as the clearance check has it, the moving section lengthened by the depth margin, and at
 * worst by the errors of both depths.
 */
export function passesBy(
  joint: Joint,
  part: Part,
  section: Section,
  band: DepthRange | null,
  view: DepthView = 'as-measured',
): Pass[] {
  const others = joint[otherPart(part)].sections.map(metalOf);
  const own = [{ ...metalOf(section), depth: band }];
  const sides = part === 'fixed' ? { fixed: own, moving: others } : { fixed: others, moving: own };
  return Array.from(meetings(sides, waysOfJoint(joint), matingRule(joint), view), (meeting) => {
    const { leg, count, fractions } = meeting;
    const placed = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, fractions.from, fractions.to);
    const seen = part === 'fixed' ? placed : seenFromMoving(placed.start, placed.motion);
    return { section: meeting[otherPart(part)].section, leg: count, strayMm: 0, isSure: true, ...seen };
  });
}

/**
 * What passes a band off its dowels while one strays from the way in, within the wander of the fit; none without one. What
 * may pass is told whole, and of it again, as `isSure`, what does pass somewhere within the wander.
 */
export function strayedPassesBy(
  joint: Joint,
  part: Part,
  section: Section,
  band: DepthRange | null,
  view: DepthView = 'as-measured',
): Pass[] {
  const { wander, dowels, legs } = joint.fit;
  if (wander === null) return [];
  const own = { ...metalOf(section), depth: band };
  const rule = { depth: matingRule(joint), guidedMm: guidedByDowelsMm(dowels) };
  return joint[otherPart(part)].sections.flatMap((other) => {
    const [fixed, moving] = part === 'fixed' ? [own, metalOf(other)] : [metalOf(other), own];
    const lever = leverOf(moving.section.loops, moving.section.depth);
    const passOn = (leg: Leg, count: number, within: Wander, isSure: boolean): Pass[] => {
      const strayed = strayedOn(fixed, moving, lever, leg, { ...rule, wander: within }, view);
      // where it may come anywhere, no cut is enough
      if (strayed === null || strayed.nearerMm === Number.POSITIVE_INFINITY) return [];
      const { start, motion, nearerMm } = strayed;
      const seen = part === 'fixed' ? { start, motion } : seenFromMoving(start, motion);
      return [{ section: other, leg: count, strayMm: nearerMm, isSure, ...seen }];
    };
    return legs.flatMap((leg, i) => {
      const exact = exactPart(wander, leg);
      const sure = passOn(leg, i + 1, exact, true);
      return exact.turnRad === wander.turnRad && wander.tiltRad === 0
        ? sure
        : [...sure, ...passOn(leg, i + 1, wander, false)];
    });
  });
}

/**
 * The depths within a section at which what passes changes: where another section, lengthened, begins or ends at
 * either end of a leg. In order, with both ends of the section; none where it reaches through every depth.
 */
export function depthBreaks(joint: Joint, part: Part, section: Section): number[] {
  const own = stretchOf(section);
  if (!isStretch(own)) return [];
  const inner = joint[otherPart(part)].sections.flatMap((other) => {
    const stretch = stretchOf(other);
    if (!isStretch(stretch)) return [];
    return endsOf(joint, part, own, stretch, strayedEnds(joint, part === 'fixed' ? other : section));
  });
  const { fromMm, toMm } = own.depth;
  const breaks = [fromMm];
  for (const mm of inner.sort((a, b) => a - b)) {
    if (mm > (breaks.at(-1) as number) + leastBandMm && mm < toMm - leastBandMm) breaks.push(mm);
  }
  return [...breaks, toMm];
}

const waysOfJoint = ({ fit }: Joint): Way[] => [atHome, ...waysOf(fit.legs)];

/** Where the ends of another section stand in this part's depth, at the stand-offs where legs begin and end. */
function endsOf(
  joint: Joint,
  part: Part,
  own: Stretch,
  other: Stretch,
  strayed: (ends: DepthRange) => number[],
): number[] {
  const { fit } = joint;
  const standOffs = waysOfJoint(joint).flatMap(({ leg }) => [leg.from.standOffMm, leg.to.standOffMm]);
  return standOffs.flatMap((mm) => {
    if (part === 'fixed') {
      const ends = sharedStandOffs(zeroDepth, reachOf(other, own, matingRule(joint), 'as-measured'));
      const [fromMm, toMm] = [ends.fromMm - mm, ends.toMm - mm];
      return [fromMm, toMm, ...strayed({ fromMm, toMm })];
    }
    const margins = [-fit.depthMarginMm, fit.depthMarginMm];
    return margins.flatMap((marginMm) => {
      const [fromMm, toMm] = [marginMm - mm - other.depth.toMm, marginMm - mm - other.depth.fromMm];
      return [fromMm, toMm, ...strayed({ fromMm, toMm })];
    });
  });
}

const zeroDepth: DepthRange = { fromMm: 0, toMm: 0 };

/**
 * Where a range of depth ends that a moving section passes while one strays: for certain, and, tilt counted, at most. The
 * latter to whole millimetres outward: sections reach differently far, and each would make bands of its own.
 */
function strayedEnds({ fit: { wander } }: Joint, { loops, depth }: Section): (ends: DepthRange) => number[] {
  if (wander === null) return () => [];
  const { standOffMm, tiltRad } = wander;
  const alongMm = standOffMm + leverOf(loops, depth).reachMm * Math.sin(tiltRad);
  return ({ fromMm, toMm }) => [
    fromMm - standOffMm,
    toMm + standOffMm,
    ...(tiltRad === 0 ? [] : [Math.floor(fromMm - alongMm), Math.ceil(toMm + alongMm)]),
  ];
}
