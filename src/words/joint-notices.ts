import { fineLength, givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Drawing, JointNotice, MissCause, PairNames } from '../joint/notices.ts';
import { inWords } from './layout.ts';

/** What is to be said of dowels, hand, bolts, path and tracing. */
export function jointNoticeText(notice: JointNotice, units: Units): string {
  const given = (mm: number): string => givenLength(mm, units);
  switch (notice.code) {
    case 'one-dowel-pair':
      return `Only one dowel pair (${notice.fixed} on ${notice.moving}): the moving part is shifted onto it, its turn is taken as drawn. Pair a second dowel.`;
    case 'dowel-spacing':
      return `${spacingText(notice.spacingErrorMm, units)}; the fit shares that out between them.`;
    case 'dowel-spacing-measure-again':
      return `${spacingText(notice.spacingErrorMm, units)}: measure both again before you trust any clearance.`;
    case 'hand-mirrored': {
      const { asDrawnRmsMm, mirroredRmsMm, fixed, moving, instead } = notice;
      const or = instead.length === 0 ? '' : ` Or holes are paired wrongly: ${insteadText(instead)}`;
      return `One of the two drawings is seen from the other side: as drawn the paired holes miss each other by ${given(asDrawnRmsMm)} (rms), with one drawing mirrored by ${given(mirroredRmsMm)}. Look again at ${viewsText(fixed, moving)}.${or}`;
    }
    case 'hand-cannot-tell':
      return handText[notice.why];
    case 'bolt-does-not-line-up': {
      const { offsetMm, allowedMm } = notice;
      if (allowedMm < 0) return `Bolt ${pairText(notice)} is thicker than its hole.`;
      return `Bolt ${pairText(notice)} does not line up: ${given(offsetMm)} off, ${given(allowedMm)} allowed.`;
    }
    case 'bolts-do-not-register': {
      const { offsetMm, limitMm, missing, of, cause } = notice;
      const others = missing === 1 ? '' : ` (${missing} of ${of} bolts miss so)`;
      return `Bolt ${pairText(notice)} misses by ${fineLength(offsetMm, units)}${others}; beyond ${given(limitMm)} nothing is judged. ${causeText(cause)}`;
    }
    case 'dowels-do-not-register': {
      const { offMm, limitMm, cause } = notice;
      return `The spacing of the paired dowels differs by ${fineLength(offMm, units)} between the two drawings; beyond ${given(limitMm)} nothing is judged. ${causeText(cause)}`;
    }
    case 'off-line-on-dowels': {
      const [standOff, proud] = [given(notice.standOffMm), given(notice.proudMm)];
      return `Leg ${notice.leg} is turned or shifted with the stand-off down to ${standOff}, but a dowel stands ${proud} proud: come into line at ${proud} or more, then slide straight home.`;
    }
    case 'off-line-on-shaft': {
      const [standOff, engages] = [given(notice.standOffMm), given(notice.engagesAtMm)];
      return `Leg ${notice.leg} is shifted off the axis with the stand-off down to ${standOff}, but the input shaft engages at ${engages}: take the shift out at ${engages} or more.`;
    }
    case 'trace-error-assumed':
      return `${notice.part}: no trace error is stated for ${notice.sections.join(', ')}; ± ${given(notice.traceErrorMm)} is assumed. State traceError, or gotBy, to have the true figure.`;
  }
}

function spacingText(spacingErrorMm: number, units: Units): string {
  const way = spacingErrorMm > 0 ? 'further apart' : 'closer together';
  return `The dowels stand ${givenLength(Math.abs(spacingErrorMm), units)} ${way} in the moving part than in the fixed part`;
}

const handText = {
  'too-few':
    'Fewer than three holes are paired, so they cannot tell whether one drawing is seen from the other side. Pair a hole or bolt that does not stand in line with the dowels, or check the hand on the castings.',
  'fit-both-ways':
    'The paired holes fit about as well as drawn as mirrored, so they cannot tell whether one drawing is seen from the other side. Pair a hole or bolt that stands well off their line, or check the hand on the castings.',
} as const;

/** The likeliest cause of holes that miss, and what to do about it. */
function causeText(cause: MissCause): string {
  switch (cause.kind) {
    case 'inches': {
      const { factor, large, small, fixed, moving } = cause;
      return `One of the drawings is in inches: the paired holes stand ${factor.toFixed(1)} times as far apart in ${large} as in ${small}. Look again at ${unitsText(fixed, moving)}.`;
    }
    case 'paired-wrongly':
      return `Likeliest holes are paired wrongly: ${insteadText(cause.instead)}`;
    case 'not-known': {
      const { fewDowels, fixed, moving } = cause;
      const dowels = fewDowels ? 'Fewer than two dowels are paired: pair two, or look at the axis. ' : '';
      return `${dowels}Look again at which holes are paired, at ${viewsText(fixed, moving)}, and measure the holes again.`;
    }
  }
}

const pairText = ({ fixed, moving }: PairNames): string => `${fixed}–${moving}`;

const insteadText = (pairs: readonly PairNames[]): string =>
  `pair ${inWords(pairs.map(({ fixed, moving }) => `${fixed} with ${moving}`))} instead.`;

const viewsText = (fixed: Drawing, moving: Drawing): string =>
  `viewedFrom of ${fixed.file} ("${fixed.viewedFrom}") and ${moving.file} ("${moving.viewedFrom}")`;

/** What the files say of their units. */
export const unitsText = (fixed: Drawing, moving: Drawing): string =>
  `units of ${fixed.file} ("${fixed.units}") and ${moving.file} ("${moving.units}")`;
