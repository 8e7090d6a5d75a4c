import type { Casting, Section } from '../job/casting.ts';
import { bareGivenLength, figure, givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { CutFigures } from '../plan/part-cut.ts';
import type { PlanFigures } from '../plan/plan-result.ts';
import { nothingToCut } from './grind-text.ts';
import { inWords } from './layout.ts';
import { shortName } from './names.ts';
import { nameCut } from './part-cuts.ts';
import { depthText } from './places.ts';
import { massText, turnText, volumeText } from './units.ts';

/** How to use a printed report. */
export const reportUse =
  'Nothing here is at true scale: mark out from the table, or from the true-scale sheets that go with this report.';

/** What was not measured, only taken: errors that nobody stated, tracing taken as complete, a margin in depth. */
export function assumptionsOf(joint: Joint): string[] {
  const { fit, fixed, moving, rotating } = joint;
  const { units, clearance } = fit;
  const parts = [fixed, moving];
  return [
    ...[...parts, ...rotating].flatMap((part) => assumedErrors(part, units)),
    ...parts.flatMap(completeness),
    `Asked: ${givenLength(clearance.homeMm, units)} at home` +
      (fit.legs.length === 0 ? '' : `, ${givenLength(clearance.wayInMm, units)} on the way in`) +
      (rotating.length === 0 ? '' : `, ${givenLength(clearance.rotatingMm, units)} to what turns`) +
      `; sections count as meeting within ${givenLength(fit.depthMarginMm, units)} of depth.`,
    ...(fit.dowels.length === 0 ? ['No dowels were paired, so the parts stand as their drawings do.'] : []),
  ];
}

function assumedErrors(part: Casting, units: Units): string[] {
  const silent = part.sections.filter(({ traceErrorStated }) => !traceErrorStated);
  const errors = [...new Set(silent.map(({ traceErrorMm }) => traceErrorMm))];
  return errors.map((mm) => {
    const ids = silent.filter(({ traceErrorMm }) => traceErrorMm === mm).map(({ id }) => `"${id}"`);
    return `The tracing error of ${inWords(ids)} of ${shortName(part)} was not stated: ± ${givenLength(mm, units)} is assumed.`;
  });
}

/** Where a part says how far its tracing goes; where it does not, the grounds of the check say so. */
const completeness = (part: Casting): string[] =>
  part.traced === null
    ? []
    : [
        `The tracing of ${shortName(part)} is complete inside the line its file gives, ${depthText(part.traced.depth, part.units)}; beyond it metal may stand, and nothing there is called clear.`,
      ];

/** What nobody can tell from the outlines of a job. */
export function notKnown(joint: Joint, plan: PlanFigures): string[] {
  const hollows = plan.cuts.map((cut) =>
    joint[cut.part].hollows.length === 0
      ? `No hollow of ${nameCut(joint, cut)} was drawn: whether water, oil or a thin wall lies behind a cut is not known. Find out before you start.`
      : `Only the hollows drawn of ${nameCut(joint, cut)} are known: a jacket, gallery or thin wall that nobody drew is guarded by nothing here.`,
  );
  return [
    ...(nothingToCut(plan)
      ? []
      : [...hollows, 'Whether the tool gets there: what stands nearer the face may be in its way.']),
    'Heat is not modelled: castings grow by tenths of a millimetre between cold and hot.',
    'Strength is not judged, nor sealing, nor what the cut does to either.',
  ];
}

/** Every section as it was traced, as cells; headings first. */
export const sectionRows = (parts: readonly Casting[], units: Units): string[][] => [
  ['part', 'section', 'depth', 'traced within', 'depth within', 'got by', 'may be cut'],
  ...parts.flatMap((part) =>
    part.sections.map((section) => [
      shortName(part),
      section.id,
      depthText(section.depth, units),
      errorText(section, units),
      section.depth === null ? '' : `± ${givenLength(section.depthErrorMm, units)}`,
      [section.gotBy, section.note].filter((words) => words !== null).join('; ') || 'not stated',
      section.mayCut ? 'yes' : 'no',
    ]),
  ),
];

const errorText = ({ traceErrorMm, traceErrorStated }: Section, units: Units): string =>
  `± ${givenLength(traceErrorMm, units)}${traceErrorStated ? '' : ', assumed'}`;

/** Every leg of the way in, as cells; headings first, nothing where only home is asked. */
export function legRows({ fit: { legs, units } }: Joint): string[][] {
  if (legs.length === 0) return [];
  const shifted = legs.some(({ from, to }) => [from, to].some(({ shift }) => shift.x !== 0 || shift.y !== 0));
  const cells = ({ standOffMm, turnRad, shift }: Position): string[] => [
    givenLength(standOffMm, units),
    turnText(turnRad),
    ...(shifted ? [`${bareGivenLength(shift.x, units)}, ${givenLength(shift.y, units)}`] : []),
  ];
  const places = (words: string): string[] => [
    `stand-off ${words}`,
    `turn ${words}`,
    ...(shifted ? [`shift ${words}`] : []),
  ];
  return [
    ['leg', ...places('from'), ...places('to')],
    ...legs.map(({ from, to }, i) => [String(i + 1), ...cells(from), ...cells(to)]),
  ];
}

/** What a cut takes off a part in all, as terms and figures. */
export function amountFacts(joint: Joint, { part, volumeMm3, massG }: CutFigures): [string, string][] {
  const { material } = joint[part];
  return [
    ['volume', volumeMm3 === null ? 'not known: a section has no depth' : volumeText(volumeMm3, joint.fit.units)],
    ['mass', massG === null ? 'not known' : massText(massG)],
    [
      'material',
      material === null
        ? 'not stated'
        : `${material.name.replaceAll('-', ' ')}, taken as ${figure(material.densityGPerCm3, 2)} g/cm³`,
    ],
  ];
}

/** The way to the viewer that a report holds, what it leads to, and the way back. */
export const moveIt = 'Move it yourself';
export const moveItNote =
  'opens this job in the viewer, out of this very file: go along the way in, and try another cut.';
export const viewerTitle = 'The job in the viewer';
export const backToReport = 'Back to the report';

/** The date, the program and what it was given. */
export const madeText = (date: string, version: string): string => `Made on ${date} by Fettle ${version}.`;
