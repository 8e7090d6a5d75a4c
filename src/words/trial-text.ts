import type { Foretold, Stop } from '../clearance/foretold.ts';
import { fineLength, lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import type { Conclusion, Explanation } from '../trial/solve.ts';
import type { Go } from '../trial/trial.ts';
import type { NextCut, TrialResult } from '../trial/trial-result.ts';
import { grindCautions } from './cautions.ts';
import { nothingToCut, planText } from './grind-text.ts';
import { columns, inWords, listed, paragraph, wrapped } from './layout.ts';
import { shortName, titleOf } from './names.ts';
import { depthText, placeText } from './places.ts';
import { areaText, fineTurnText, turnText } from './units.ts';

/** What trial fits have shown, as a builder reads it: the conclusion, why, what still to measure, and the cut that is left. */
export function trialText(joint: Joint, result: TrialResult): string {
  const { explanation, next, measureNext, trial } = result;
  return [
    ...wrapped(conclusionLine(joint, result), ''),
    titleOf(joint),
    ...paragraph('How the moving part lies', listed(liesTexts(joint, explanation))),
    ...paragraph('The outlines', listed(outlineTexts(joint, explanation))),
    ...paragraph('The readings', readingLines(joint, explanation)),
    ...paragraph('The faces', listed(faceTexts(joint, trial.goes))),
    ...paragraph('Measure next', listed(measureNext === null ? [] : [measureText(joint, measureNext)])),
    ...paragraph('Warnings', listed(next === null ? [] : pastLastTexts(joint, next))),
    ...(next === null
      ? cautionLines(joint)
      : ['', 'What is left to cut', '', planText(next.joint, next.plan), ...cautionLines(joint)]),
    '',
  ].join('\n');
}

const cautionLines = (joint: Joint): string[] => paragraph('Take care', listed(grindCautions(joint)));

const conclusions: Readonly<Record<Exclude<Conclusion, 'explained' | 'partly'>, string>> = {
  'too-little':
    'NOT SETTLED: these readings would agree with very different positions. Take more of them, on different sides.',
  'traced-wrong': 'MEASURE AGAIN: an outline is not as it was traced.',
  unexplained:
    'NOT EXPLAINED: no small shift or turn, with one thing wrong, gives these readings. Look at them again, and at whether the faces were together.',
};

/** What trial fits have shown, in one line. */
export function conclusionLine(joint: Joint, { explanation, next }: TrialResult): string {
  const { conclusion, sections } = explanation;
  if (conclusion === 'traced-wrong') {
    const wrong = sections.filter(({ tracedWrong }) => tracedWrong);
    const named = wrong.map(
      ({ part, section, offsetMm }) => `"${section}" of ${shortName(joint[part])} (${offsetText(joint, offsetMm)})`,
    );
    return `${conclusions[conclusion]} Trace ${inWords(named)} anew before anything more is cut.`;
  }
  if (conclusion !== 'explained' && conclusion !== 'partly') return conclusions[conclusion];
  const settled =
    conclusion === 'explained'
      ? 'EXPLAINED: by these readings'
      : 'PARTLY SETTLED: these readings tell how it lies one way and not the other; as far as they do,';
  if (next === null || nothingToCut(next.plan)) return `${settled} nothing more has to come off.`;
  return `${settled} there is more to come off${next.plan.holds ? '.' : ', and the plan for it does not hold.'}`;
}

function liesTexts({ fit }: Joint, { conclusion, shift, turnRad, shiftErrorMm, turnErrorRad }: Explanation): string[] {
  if (conclusion === 'unexplained') return [];
  const across = `${fineLength(Math.abs(shift.x), fit.units)} to the ${shift.x < 0 ? 'left' : 'right'}`;
  const up = `${fineLength(Math.abs(shift.y), fit.units)} ${shift.y < 0 ? 'below' : 'above'}`;
  return [
    `Its outlines lie ${across} of where the fit puts them and ${up}, within ± ${fineLength(shiftErrorMm, fit.units)}.`,
    `They are turned ${turnRad < 0 ? 'clockwise' : 'anticlockwise'} by ${fineTurnText(Math.abs(turnRad))}, within ± ${fineTurnText(turnErrorRad)}.`,
    'As you look at the fixed face; limits of 95 in a hundred.',
  ];
}

const offsetText = ({ fit }: Joint, mm: number): string =>
  `${fineLength(Math.abs(mm), fit.units)} ${mm < 0 ? 'smaller' : 'larger'} all round than traced`;

/** Only what is larger or smaller than chance has it is told. */
function outlineTexts(joint: Joint, { conclusion, sections }: Explanation): string[] {
  if (conclusion === 'unexplained') return [];
  const told = sections.filter(({ offsetMm, errorMm, tracedWrong }) => tracedWrong || Math.abs(offsetMm) > errorMm);
  if (told.length === 0) return ['By these readings none is larger or smaller than it was traced.'];
  return told.map(
    ({ part, section, offsetMm, errorMm, tracedWrong }) =>
      `"${section}" of ${shortName(joint[part])} is ${offsetText(joint, offsetMm)}, within ± ${fineLength(errorMm, joint.fit.units)}${tracedWrong ? ': traced wrong' : ''}.`,
  );
}

function readingLines({ fit }: Joint, { readings }: Explanation): string[] {
  if (readings.length === 0) return [];
  const { units } = fit;
  return columns([
    ['go', 'reading', 'read', 'by all of them', ''],
    ...readings.map(({ id, go, measuredMm, relation, expectedMm, disagrees }) => [
      String(go),
      id,
      `${relation === 'equal' ? '' : relation === 'at-least' ? 'at least ' : 'at most '}${fineLength(measuredMm, units)}`,
      fineLength(expectedMm, units),
      disagrees ? 'disagrees: look at it again' : '',
    ]),
  ]);
}

/** Feeler gauges tell of tilt, and are never read as shift or turn. */
function faceTexts({ fit }: Joint, goes: readonly Go[]): string[] {
  return goes.flatMap(({ go, faces }) => {
    const gaps = faces.map(({ gapMm }) => gapMm);
    if (gaps.length === 0) return [];
    const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
    if (most === 0) return [`At go ${go} the faces were together all round.`];
    const apart =
      least === most
        ? `${fineLength(least, fit.units)} apart where they were gauged`
        : `${fineLength(least, fit.units)} to ${fineLength(most, fit.units)} apart`;
    return [
      `At go ${go} they stood ${apart}: something holds them off${least === most ? '' : ', more on one side'}. What was read then is of a housing that was not home.`,
    ];
  });
}

function measureText(joint: Joint, next: NonNullable<TrialResult['measureNext']>): string {
  const { units } = joint.fit;
  const where =
    next.place === null
      ? `on "${next.section}", ${placeText(next.at, joint)}, ${lengthText(next.depthMm, units)} from face`
      : `at table place ${next.place}, ${lengthText(next.depthMm, units)} from face`;
  return `Modelling clay ${where}, home: it should be ${fineLength(next.expectedMm, units)}, and is known to ± ${fineLength(next.expectedErrorMm, units)} only.`;
}

const pastLastTexts = (joint: Joint, { pastLast }: NextCut): string[] =>
  pastLast.map(
    ({ part, section, areaMm2 }) =>
      `The lines on "${section}" of ${shortName(joint[part])} now lie past the last line of the plan before, by ${areaText(areaMm2, joint.fit.units)}: see whether the wall behind allows it.`,
  );

/** Where it will stop before anything is cut, and within what; or why nobody can say. */
export function foretoldTexts(joint: Joint, foretold: Foretold): string[] {
  if (foretold.unknown !== null) return [unforetold[foretold.unknown]];
  const range = stopRangeTexts(joint, foretold);
  const { stop, earliest } = foretold;
  if (earliest === null)
    return [
      'By the outlines as traced nothing stops it on the way in, nor with their errors (95 in a hundred).',
      ...range,
    ];
  if (stop === null) return ['By the outlines as traced it goes all the way.', ...range];
  const where = `on "${stop.fixedSection}" of ${shortName(joint.fixed)}, ${placeText(stop.where, joint)}, ${depthText(stop.depth, joint.fit.units)}`;
  return [`It will stop at ${stopText(joint, stop)}, ${where}.`, ...range];
}

const unforetold: Readonly<Record<NonNullable<Foretold['unknown']>, string>> = {
  'no-way-in':
    "The fit tells of no way in, so nothing is foretold of where it stops on one. Whether it goes home is the check's to say.",
  'not-judged':
    'Nothing is foretold: nothing of this job can be judged as it stands, for the reason that the check gives.',
};

/** What tracing errors, and metal that nobody traced, may make of a stop. */
export function stopRangeTexts(joint: Joint, { earliest, latest, untraced }: Foretold): string[] {
  const sooner = untraced ? ['It passes where nobody has traced: metal there may stop it sooner.'] : [];
  if (earliest === null) return sooner;
  const until = latest === null ? ', or go all the way' : ` or as late as ${stopText(joint, latest)}`;
  return [`With the tracing errors it may stop as early as ${stopText(joint, earliest)}${until}.`, ...sooner];
}

function stopText({ fit }: Joint, { turnRad, standOffMm, dowelGaps: [gap] }: Stop): string {
  const at = `${turnText(turnRad)} and ${lengthText(standOffMm, fit.units)} stand-off`;
  return gap === undefined ? at : `${at} (${gap.fixed} ${lengthText(gap.gapMm, fit.units)} from its hole)`;
}
