import type { Warning } from '../model/check-answer.ts';
import type { CutterAnswer, CutterEnd, PartCut } from '../model/grind-answer.ts';

/** What a cutter leaves behind, cannot get at, or was not asked about. */
export const cutterWarnings = (cuts: readonly PartCut[]): Warning[] =>
  cuts.flatMap(({ cutter }) => (cutter === null ? [] : [...ends(cutter), ...narrow(cutter), ...covered(cutter)]));

const mmText = (mm: number): string => `${mm.toFixed(1)} mm`;

const ends = (cutter: CutterAnswer): Warning[] => cutter.ends.flatMap(endWarning);

function endWarning({ section, atMm, what, mm, reachMm, against, at }: CutterEnd): Warning[] {
  const fillet = `a fillet ${mmText(mm)} high that reaches ${mmText(reachMm)} along the depth`;
  switch (what) {
    case 'left':
      return [
        {
          code: 'cutter-fillet-left',
          text: `The ball leaves ${fillet} standing in "${section}" at ${mmText(atMm)} from the face: the asked clearance is not there until it is gone.`,
          at,
        },
      ];
    case 'against':
      return [
        {
          code: 'cutter-fillet-against',
          text: `In the corner of "${section}" with "${against}", ${mmText(atMm)} from the face, the ball leaves ${fillet}: take it out with a flat cutter or a file.`,
          at,
        },
      ];
    case 'cut-past':
    case 'run-past':
      return [];
  }
}

const narrow = ({ narrow, radiusMm }: CutterAnswer): Warning[] =>
  narrow.map(({ section, at, gapMm }) => ({
    code: 'cutter-cannot-enter',
    text: `A cutter of radius ${mmText(radiusMm)} does not get into "${section}" from the side here: the gap between metal that stays is ${mmText(gapMm)} wide.`,
    at,
  }));

const covered = ({ covered }: CutterAnswer): Warning[] =>
  covered.map(({ section, by, at }) => ({
    code: 'cutter-covered',
    text: `"${by}" stands nearer the face than the cut in "${section}" and covers it here: whether a cutter gets at it along the crank is not worked out.`,
    at,
  }));
