import type { WhyAsItWas } from '../geometry/cutting/straight-edge.ts';
import { figure, givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { PlanNotice } from '../plan/notices.ts';
import { noticeText } from './notices.ts';
import { areaText } from './units.ts';

/** A notice of a plan in words. */
export function planNoticeText(notice: PlanNotice, units: Units): string {
  switch (notice.code) {
    case 'plans-a-touch':
      return 'A clearance of nothing is asked, so the plan only makes the parts touch: it leaves no room for cast skin, heat or the hand.';
    case 'takes-a-great-part':
      return `The cut in "${notice.section}" takes ${areaText(notice.areaMm2, units)}, ${figure(100 * notice.share, 0)} % of the largest section traced: nobody grinds that. Look again at the clearance, the wander and the way in that are asked, and at the units the parts were drawn in. What else would give is not looked for.`;
    case 'cuts-mating-face':
      return `The cut in "${notice.section}" goes through its mating face: find out first whether a gasket seals there.`;
    case 'hole-not-guarded':
      return `How large "${notice.hole}" is, is not stated, so no wall to it is kept: give it a diameter or a thread.`;
    case 'cutter-fillet-left':
      return `The ball leaves ${filletText(notice, units)} standing in "${notice.section}" at ${givenLength(notice.atMm, units)} from the face: the asked clearance is not there until it is gone.`;
    case 'cutter-fillet-against':
      return `${notice.against === null ? 'Metal that must stay' : `"${notice.against}"`} keeps the cutter out of "${notice.section}" at ${givenLength(notice.atMm, units)} from the face: it leaves ${filletText(notice, units)}. Take that out with a flat cutter, a smaller one, or a file.`;
    case 'cutter-cannot-enter':
      return `A cutter of radius ${givenLength(notice.radiusMm, units)} does not get into "${notice.section}" from the side here: the gap between metal that stays is ${lengthText(notice.gapMm, units)} wide.`;
    case 'cutter-covered':
      return `"${notice.by}" stands nearer the face than the cut in "${notice.section}" and covers it here: whether a cutter gets at it along the axis is not worked out.`;
    case 'edge-not-straight':
      return `The edge of the cut in "${notice.section}" is left as it was here: ${reasons[notice.why]}.`;
    default:
      return noticeText(notice, units);
  }
}

const filletText = (
  { heightMm, reachMm }: { readonly heightMm: number; readonly reachMm: number },
  units: Units,
): string => `a fillet ${lengthText(heightMm, units)} high that reaches ${lengthText(reachMm, units)} along the depth`;

const reasons = {
  opening: 'it is an opening within the metal, which no straight line gets at',
  'no-room': 'no line of straight pieces keeps within the metal',
  'do-not-cut': 'straight pieces would bite what must not be cut',
} as const satisfies Record<WhyAsItWas, string>;
