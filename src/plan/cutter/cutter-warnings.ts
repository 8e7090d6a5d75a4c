import type { Warning } from '../../answers/check-answer.ts';
import type { CutterAnswer, CutterEnd, PartCut } from '../../answers/grind-answer.ts';
import { givenLength, lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';

/** What a cutter leaves behind, cannot get at, or was not asked about. */
export const cutterWarnings = (cuts: readonly PartCut[], units: Units): Warning[] =>
  cuts.flatMap(({ cutter }) =>
    cutter === null ? [] : [...ends(cutter, units), ...narrow(cutter, units), ...covered(cutter)],
  );

const ends = (cutter: CutterAnswer, units: Units): Warning[] => cutter.ends.flatMap((end) => endWarning(end, units));

function endWarning({ section, atMm, what, mm, reachMm, against, at }: CutterEnd, units: Units): Warning[] {
  const fillet = `a fillet ${lengthText(mm, units)} high that reaches ${lengthText(reachMm, units)} along the depth`;
  switch (what) {
    case 'left':
      return [
        {
          code: 'cutter-fillet-left',
          text: `The ball leaves ${fillet} standing in "${section}" at ${givenLength(atMm, units)} from the face: the asked clearance is not there until it is gone.`,
          at,
        },
      ];
    case 'against':
      return [
        {
          code: 'cutter-fillet-against',
          text: `${against === null ? 'Metal that must stay' : `"${against}"`} keeps the cutter out of "${section}" at ${givenLength(atMm, units)} from the face: it leaves ${fillet}. Take that out with a flat cutter, a smaller one, or a file.`,
          at,
        },
      ];
    case 'cut-past':
    case 'run-past':
      return [];
  }
}

const narrow = ({ narrow, radiusMm }: CutterAnswer, units: Units): Warning[] =>
  narrow.map(({ section, at, gapMm }) => ({
    code: 'cutter-cannot-enter',
    text: `A cutter of radius ${givenLength(radiusMm, units)} does not get into "${section}" from the side here: the gap between metal that stays is ${lengthText(gapMm, units)} wide.`,
    at,
  }));

const covered = ({ covered }: CutterAnswer): Warning[] =>
  covered.map(({ section, by, at }) => ({
    code: 'cutter-covered',
    text: `"${by}" stands nearer the face than the cut in "${section}" and covers it here: whether a cutter gets at it along the crank is not worked out.`,
    at,
  }));
