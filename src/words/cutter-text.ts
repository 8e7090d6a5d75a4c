import { fineLength, givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { CutterEnd, CutterResult } from '../plan/cutter/cutter-result.ts';
import type { CutFigures } from '../plan/part-cut.ts';
import type { PlanFigures } from '../plan/plan-result.ts';
import { textsByPart } from './part-cuts.ts';
import { depthText } from './places.ts';
import { volumeText, weighedText } from './units.ts';

/** What the cutter makes of the plan: the metal it takes beyond need, how far it runs past, and what it leaves. */
export function cutterTexts(joint: Joint, plan: PlanFigures): string[] {
  return textsByPart(
    joint,
    plan,
    ({ cutter, sections }) => (cutter === null ? [] : textsOf(cutter, sections, joint.fit.units)),
    'first',
  );
}

function textsOf(cutter: CutterResult, sections: CutFigures['sections'], units: Units): string[] {
  const { radiusMm, nose, scallopMm } = cutter;
  const scallop =
    scallopMm === null ? [] : [`At the stepover you gave the ball leaves ridges ${fineLength(scallopMm, units)} high.`];
  return [
    `The cut is shaped for a ${nose}-nosed cutter of radius ${givenLength(radiusMm, units)}: no corner it leaves is tighter. ${extraText(cutter, units)}`,
    ...waysTexts(sections, units),
    ...cutter.ends.flatMap((end) => endText(end, units)),
    ...scallop,
    'A bigger fillet than this is always better; leave no nick, step or chatter mark in it, for cracks start there.',
  ];
}

function extraText({ extraVolumeMm3, extraMassG, neededVolumeMm3 }: CutterResult, units: Units): string {
  if (extraVolumeMm3 === null || neededVolumeMm3 === null) return '';
  if (extraVolumeMm3 < 1) return 'It takes no more for that than the clearance needs.';
  return `That takes ${weighedText(extraVolumeMm3, extraMassG, units)} more than the ${volumeText(neededVolumeMm3, units)} the clearance alone needs.`;
}

const waysTexts = (sections: CutFigures['sections'], units: Units): string[] =>
  sections.flatMap(({ id, bands }) =>
    bands.flatMap(({ cutterWay, depth }) => {
      if (cutterWay === null || cutterWay === 'as-needed') return [];
      const where = `"${id}", ${depthText(depth, units)}`;
      return [
        cutterWay === 'corners'
          ? `${where}: corners the cutter does not get into are let in a little, which is lighter than growing the whole cut.`
          : `${where}: the whole cut is grown to where the cutter has room, which is lighter than letting in its corners.`,
      ];
    }),
  );

function endText({ section, atMm, what, mm, towards }: CutterEnd, units: Units): string[] {
  const where = `"${section}" at ${givenLength(Math.abs(atMm), units)} ${atMm < 0 ? 'proud of' : 'from'} the face`;
  switch (what) {
    case 'cut-past':
      return [
        `${where}: the depths above run ${lengthText(mm, units)} past what is in the way, so that no fillet of the ball stands in it.`,
      ];
    case 'run-past':
      return [
        `${where}: the section ends there as traced. Run the ball ${lengthText(mm, units)} past it toward the ${towards}, into open air, or its fillet is left.`,
      ];
    case 'left':
    case 'against':
      // said among the warnings, with what to do
      return [];
  }
}
