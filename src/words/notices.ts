import type { CheckNotice } from '../clearance/notices.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import { likelyDepthsText, startRemedyText } from './depth-notices.ts';
import { jointNoticeText, unitsText } from './joint-notices.ts';
import { inWords } from './layout.ts';

/** What a notice says, lengths in the units of the job. */
export function noticeText(notice: CheckNotice, units: Units): string {
  switch (notice.code) {
    case 'sizes-differ': {
      const { factor, large, small, fixed, moving } = notice;
      return `${large} is ${factor.toFixed(0)} times the size of ${small}, and no two dowels confirm the scale: likeliest one of them is in inches and the other in millimetres. Look again at ${unitsText(fixed, moving)}, or pair two dowels.`;
    }
    case 'never-shares-depth':
      return `No two sections ever share depth, so nothing was measured between them. ${likelyDepthsText(notice.likely)}`;
    case 'home-shares-nothing':
      return `Sections share depth on the way in, but none do at home, so nothing was measured there. ${likelyDepthsText(notice.likely)}`;
    case 'starts-in-shared-depth':
      return `At the first position "${notice.fixedSection}" and "${notice.movingSection}" already share depth; the way to that position is not checked. ${startRemedyText(notice.remedy)}`;
    case 'never-near': {
      const dowels = notice.fewDowels
        ? 'fewer than two dowels are paired, so the parts may not lie where they belong'
        : 'the axis';
      return `No two sections ever come nearer than ${lengthText(notice.leastMm, units)}: castings that go together do. Look again at what lays them beside one another: ${dowels}, and whether one of the drawings is in inches.`;
    }
    case 'inside-other-metal':
      return `"${notice.movingSection}" and "${notice.fixedSection}" begin one wholly inside the metal of the other: a housing drawn solid where it should be hollow? Draw the inside of a hollow part as a loop of its own.`;
    case 'sections-without-depth-overlap':
      return `"${notice.fixedSection}" and "${notice.movingSection}" have no depth and lie over one another by more than half: give both their depths if they are not at the same one.`;
    case 'not-traced-here':
      return `"${notice.section}" comes to where the ${notice.side} part is not traced: metal may stand there. Trace it farther, then check again.`;
    case 'tilt-needs-depths':
      return `${inWords(notice.sections.map((section) => `"${section}"`))} ${notice.sections.length === 1 ? 'has' : 'have'} no depth: how far tilting carries metal from the face cannot be told without. State depths, or leave tilt out of the wander.`;
    case 'rotating-close':
      return `"${notice.part}" runs ${lengthText(notice.clearanceMm, units)} from the ${notice.against} part: under ${givenLength(notice.limitMm, units)} is too near for a rotating part.`;
    case 'one-dowel-pair':
    case 'dowel-spacing':
    case 'dowel-spacing-measure-again':
    case 'hand-mirrored':
    case 'hand-cannot-tell':
    case 'bolt-does-not-line-up':
    case 'bolts-do-not-register':
    case 'dowels-do-not-register':
    case 'off-line-on-dowels':
    case 'off-line-on-shaft':
    case 'trace-error-assumed':
      return jointNoticeText(notice, units);
  }
}
