import { round6 } from '../geometry/plane/rounding.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { Choice, Choices, CutterChoice } from '../plan/choices/choices.ts';
import { againstTexts } from '../words/hindrance-text.ts';
import { sourceText } from '../words/source-text.ts';
import type { ChoicesAnswer } from './choices-answer.ts';
import { roundOrNull } from './rounded.ts';

/** Which part and which cutter as JSON, the answer of `fettle grind --choices --json`: mm, mm³ and g, rounded to 1e-6. */
export const choicesAnswer = ({ fit }: Joint, choices: Choices): ChoicesAnswer => ({
  format: 'fettle-choices/1',
  title: fit.title,
  reason: choices.reason,
  parts: choices.parts.map((part) => ({ cut: part.cut, ...choiceAnswer(part, fit.units) })),
  cut: fit.cut,
  nose: choices.nose,
  cuttersListed: choices.areListed,
  cutters: choices.cutters.map((cutter) => cutterAnswer(cutter, fit.units)),
  kindestRadiusMm: roundOrNull(choices.kindestMm),
  reference: { ...choices.reference.bar, ...choices.reference.covers, source: sourceText(choices.reference.source) },
});

const choiceAnswer = (
  { holds, cutsNothing, volumeMm3, massG, leastWall, against }: Choice,
  units: Units,
): Omit<ChoicesAnswer['parts'][number], 'cut'> => ({
  holds,
  cutsNothing,
  volumeMm3: roundOrNull(volumeMm3),
  massG: roundOrNull(massG),
  leastWall: leastWall && { of: leastWall.of, id: leastWall.id, wallMm: round6(leastWall.wallMm) },
  against: againstTexts(against, units),
});

const cutterAnswer = (cutter: CutterChoice, units: Units): ChoicesAnswer['cutters'][number] => ({
  radiusMm: round6(cutter.radiusMm),
  ...choiceAnswer(cutter, units),
  moreThanLeast: roundOrNull(cutter.moreThanLeast),
  leastFilletMm: roundOrNull(cutter.leastFilletMm),
  leaves: cutter.leaves.map(({ section, atMm, mm, against }) => ({
    section,
    atMm: round6(atMm),
    heightMm: round6(mm),
    against,
  })),
  narrow: cutter.narrow.map(({ section, gapMm }) => ({ section, gapMm: round6(gapMm) })),
  stressRatio: roundOrNull(cutter.stressRatio),
});
