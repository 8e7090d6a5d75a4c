import type { Warning } from '../../answers/check-answer.ts';
import type { PartCut, StraightAnswer } from '../../answers/grind-answer.ts';

/** Where the edge of a cut is left as it was, though a straight one was asked for. */
export const straightWarnings = (cuts: readonly PartCut[]): Warning[] =>
  cuts.flatMap(({ straight }) => (straight?.asItWas ?? []).map(warningOf));

const warningOf = ({ section, at, why }: StraightAnswer['asItWas'][number]): Warning => ({
  code: 'edge-not-straight',
  text: `The edge of the cut in "${section}" is left as it was here: ${reasons[why]}.`,
  at,
});

const reasons = {
  opening: 'it is an opening within the metal, which no straight line gets at',
  'no-room': 'no line of straight pieces keeps within the metal',
  'do-not-cut': 'straight pieces would bite what must not be cut',
} as const satisfies Record<StraightAnswer['asItWas'][number]['why'], string>;
