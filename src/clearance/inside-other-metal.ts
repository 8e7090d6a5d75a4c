import { startsInside } from '../geometry/motion/overlap.ts';
import { moveRegion } from '../geometry/plane/loop.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { regionAreaMm2, regionOverlapAreaMm2 } from '../geometry/polygons/region-measures.ts';
import type { Section } from '../job/casting.ts';
import { home, type Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { CheckNotice } from './notices.ts';
import { sectionMeetings, standingAt } from './passings.ts';
import { whollyShare } from './tolerances.ts';
import { treeOf } from './trees.ts';

/**
 * Sections of which one lies wholly in the metal of the other where the way in begins, or at home where only that is
 * asked: no casting gets there, so one of them is likely drawn solid where it is hollow.
 */
export function insideOtherMetal(joint: Joint): CheckNotice[] {
  const at = joint.fit.legs[0]?.from ?? home;
  return [...sectionMeetings(joint, [standingAt(at)])]
    .filter(({ fixed, moving }) => oneInOther(fixed.section, moving.section, at))
    .map(({ fixed, moving }) => ({
      code: 'inside-other-metal',
      fixedSection: fixed.section.id,
      movingSection: moving.section.id,
    }));
}

function oneInOther(fixed: Section, moving: Section, { turnRad, shift }: Position): boolean {
  if (fixed.loops.length === 0 || moving.loops.length === 0) return false;
  const placement = rigid(turnRad, shift);
  // the trees are there already, and few sections begin so: areas are only cut out where they do
  if (!startsInside(treeOf(fixed.loops), treeOf(moving.loops), placement)) return false;
  const sharedMm2 = regionOverlapAreaMm2(fixed.loops, moveRegion(moving.loops, placement));
  return sharedMm2 >= whollyShare * Math.min(regionAreaMm2(fixed.loops), regionAreaMm2(moving.loops));
}
