import { type Motion, partOfMotion } from '../geometry/motion/motion.ts';
import { seenFromMoving } from '../geometry/motion/seen-from-moving.ts';
import { type Rigid, rigid } from '../geometry/plane/rigid.ts';
import type { DepthRange, Section } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { atHome, matingRule, meetings, metalOf, type Way, waysOf } from './passings.ts';
import { type DepthView, isStretch, reachOf, type Stretch, stretchOf } from './shared-depth.ts';
import { leastBandMm } from './tolerances.ts';

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
  const others = joint[otherOf(part)].sections.map(metalOf);
  const own = [{ ...metalOf(section), depth: band }];
  const sides = part === 'fixed' ? { fixed: own, moving: others } : { fixed: others, moving: own };
  return Array.from(meetings(sides, waysOfJoint(joint), matingRule(joint), view), (meeting) => {
    const { leg, count, fractions } = meeting;
    const placed = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, fractions.from, fractions.to);
    const seen = part === 'fixed' ? placed : seenFromMoving(placed.start, placed.motion);
    return { section: meeting[otherOf(part)].section, leg: count, ...seen };
  });
}

const otherOf = (part: Part): Part => (part === 'fixed' ? 'moving' : 'fixed');

/**
 * The depths within a section at which what passes changes: where another section, lengthened, begins or ends at
 * either end of a leg. In order, with both ends of the section; none where it reaches through every depth.
 */
export function depthBreaks(joint: Joint, part: Part, section: Section): number[] {
  const own = stretchOf(section);
  if (!isStretch(own)) return [];
  const others = joint[otherOf(part)].sections.map(stretchOf).filter(isStretch);
  const inner = others.flatMap((other) => endsOf(joint, part, own, other));
  const { fromMm, toMm } = own.depth;
  const breaks = [fromMm];
  for (const mm of inner.sort((a, b) => a - b)) {
    if (mm > (breaks.at(-1) as number) + leastBandMm && mm < toMm - leastBandMm) breaks.push(mm);
  }
  return [...breaks, toMm];
}

const waysOfJoint = ({ fit }: Joint): Way[] => [atHome, ...waysOf(fit.legs)];

/** Where the ends of another section stand in this part's depth, at the stand-offs where legs begin and end. */
function endsOf(joint: Joint, part: Part, own: Stretch, other: Stretch): number[] {
  const marginMm = joint.fit.depthMarginMm;
  const standOffs = waysOfJoint(joint).flatMap(({ leg }) => [leg.from.standOffMm, leg.to.standOffMm]);
  return standOffs.flatMap((mm) => {
    if (part === 'fixed') {
      const { fromMm, toMm } = reachOf(other, own, matingRule(joint), 'as-measured');
      return [-mm - fromMm, -mm - toMm];
    }
    return [-mm - other.depth.fromMm, -mm - other.depth.toMm].flatMap((end) => [end - marginMm, end + marginMm]);
  });
}
