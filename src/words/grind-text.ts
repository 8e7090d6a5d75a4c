import type { CheckResult } from '../clearance/check-result.ts';
import type { Material } from '../job/casting.ts';
import { lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { Alternative } from '../plan/alternatives/alternative.ts';
import type { CutFigures } from '../plan/part-cut.ts';
import type { PlanFigures } from '../plan/plan-result.ts';
import { alternativeTexts } from './alternative-text.ts';
import { checkCautions, grindCautions } from './cautions.ts';
import { groundsOf } from './check-text.ts';
import { cutterTexts } from './cutter-text.ts';
import { hindranceTexts } from './hindrance-text.ts';
import { columns, inWords, listed, paragraph, wrapped } from './layout.ts';
import { measureRows } from './measure-text.ts';
import { titleOf } from './names.ts';
import { otherWayCommands } from './other-way-text.ts';
import { nameCut, textsByPart } from './part-cuts.ts';
import { keepOffLines, takeOffLines, uncuredLines, wallLines } from './plan-text.ts';
import { otherNotices, reasonSteps, reasonText, reasonTexts } from './reasons.ts';
import { straightTexts } from './straight-text.ts';
import { weighedText } from './units.ts';

/**
 * A cut plan as a builder reads it, the answer of `fettle grind`: the verdict, what comes off where, what is left, and what
 * to do next, in the units of the fit. No alternatives where they were not worked out; with the check of the job as it is
 * it says as well where another way in may need no cutting. Nothing is thrown.
 *
 * @example The verdict on a starter that fouls an oil boss.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, drain, grindText, readJob } from 'fettle';
 *
 * const fit = 'profiles/starter-boss/starter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, plan } = found.value;
 * const [verdict] = grindText(joint, drain(plan()), []).split('\n');
 * console.log(verdict); // THE PLAN HOLDS: take 10.5 g (1.5 cm³) of grey iron off Housing.
 * ```
 */
export const grindText = (
  joint: Joint,
  plan: PlanFigures,
  alternatives: readonly Alternative[],
  check: CheckResult | null = null,
): string => `${planText(joint, plan)}\n${afterPlanText(joint, plan, alternatives, check)}`;

/** The first of it, which stands before anything else was tried: what else would give may take many times as long. */
export function planText(joint: Joint, plan: PlanFigures): string {
  const { cuts, afterCut } = plan;
  return [
    ...wrapped(planLine(joint, plan), ''),
    titleOf(joint),
    ...paragraph('Why nothing is planned', listed(reasonTexts(joint, plan))),
    ...cuts.flatMap((cut) => paragraph(`Take off ${nameCut(joint, cut)}`, takeOffLines(joint, cut))),
    ...paragraph('The cutter', listed(cutterTexts(joint, plan))),
    ...paragraph('Straight edges', listed(textsByPart(joint, plan, (cut) => straightTexts(joint, cut), 'first'))),
    ...paragraph('Left standing in the way', uncuredLines(joint, plan)),
    ...paragraph(nothingToCut(plan) ? 'As it stands' : 'After the cut', columns(afterCutRows(joint, plan))),
    ...paragraph('Walls left behind it', wallLines(joint, plan)),
    ...cuts.flatMap((cut) =>
      paragraph(
        cuts.length === 1 ? 'Not to be cut' : `Not to be cut of ${nameCut(joint, cut)}`,
        keepOffLines(joint, joint[cut.part]),
      ),
    ),
    ...paragraph('Warnings', listed(otherNotices(joint, plan))),
    ...paragraph('What this rests on', listed([...boundsOf(joint, plan), ...groundsOf(joint, afterCut)])),
  ].join('\n');
}

/** The rest of it: what else would give, and what to do next. */
export const afterPlanText = (
  joint: Joint,
  plan: PlanFigures,
  alternatives: readonly Alternative[],
  check: CheckResult | null,
): string =>
  [
    ...paragraph('What else would give', listed(alternativeTexts(joint, alternatives))),
    ...paragraph('Next', listed([...planSteps(plan), ...planCommands(joint, plan, check)])),
    ...paragraph('Take care', listed(nothingToCut(plan) ? checkCautions(joint) : grindCautions(joint))),
  ].join('\n');

/** Clearances after the cut as cells; headings first. */
export const afterCutRows = (joint: Joint, { afterCut }: PlanFigures): string[][] =>
  measureRows(joint, { ...afterCut, rotating: [] });

export const nothingToCut = ({ cuts }: PlanFigures): boolean => cuts.every(({ sections }) => sections.length === 0);

/** The verdict of a plan in one line, the word first. */
export function planLine(joint: Joint, plan: PlanFigures): string {
  if (plan.reason !== null) return `NOT PLANNED: ${reasonText(plan.reason)}.`;
  const { cuts, holds, hindrances } = plan;
  if (nothingToCut(plan)) {
    return holds
      ? 'NOTHING TO TAKE OFF: the clearance you asked for is there already.'
      : `NO PLAN: nothing that may be cut on ${cuts.map((cut) => nameCut(joint, cut)).join(' or ')} would cure it.`;
  }
  const takeOff = inWords(cuts.filter(({ sections }) => sections.length > 0).map((cut) => offText(joint, cut)));
  if (holds) return `THE PLAN HOLDS: take ${takeOff}.`;
  const against = inWords(hindranceTexts(hindrances, joint.fit.units));
  return `THE PLAN DOES NOT HOLD: ${against}. It would take ${takeOff}.`;
}

/** How much comes off one casting: `20.9 g (2.9 cm³) of grey iron off Iron four`. */
function offText(joint: Joint, cut: CutFigures): string {
  const { material } = joint[cut.part];
  const of = material === null ? '' : ` of ${materialText(material)}`;
  return `${amountText(cut, joint.fit.units)}${of} off ${nameCut(joint, cut)}`;
}

function amountText({ massG, volumeMm3 }: CutFigures, units: Units): string {
  return volumeMm3 === null ? 'metal' : weighedText(volumeMm3, massG, units);
}

const materialText = ({ name }: Material): string => name.replaceAll('-', ' ');

export function boundsOf(joint: Joint, plan: PlanFigures): string[] {
  if (nothingToCut(plan)) return [];
  const { units } = joint.fit;
  const boundsMm = plan.cuts.map(({ boundMm }) => boundMm);
  const more = lengthText(Math.max(...boundsMm, leastSaidMm[units]), units);
  return [`No line leaves less room than asked; where a line is not exact it takes off less than ${more} more.`];
}

/** Less than this is not told apart by a builder. */
const leastSaidMm = { mm: 0.1, in: 0.254 } as const;

/** What to do next, at the bench. */
export function planSteps(plan: PlanFigures): string[] {
  if (plan.reason !== null) return reasonSteps(plan.reason);
  if (nothingToCut(plan)) {
    return plan.holds ? ['Offer it up.'] : ['Offer more to the grinder ("mayCut"), or cut the other part ("cut").'];
  }
  if (!plan.holds) {
    return [
      'Do not start cutting: settle what stands against the plan, then plan it again.',
      'What may help: a smaller clearance, another turn or stand-off on the way in, the other part, or tracing again with less error.',
    ];
  }
  return [
    'Measure every wall named above before you start.',
    'Grind to the first line and offer up. Go on only where it marks, a little at a time, and never past the last line.',
    'Write down what you took off where, and check again with what you measure.',
  ];
}

/** The commands that go on from a plan, for whoever reads it in a terminal. */
function planCommands(joint: Joint, plan: PlanFigures, check: CheckResult | null): string[] {
  const { file } = joint.fit;
  if (plan.reason !== null) return [`Check again: fettle check ${file}`];
  if (nothingToCut(plan) && plan.holds) return [];
  const draw = `The lines on a drawing: fettle draw ${file} -o fit.svg`;
  return [...(check === null ? [] : otherWayCommands(joint, check)), draw];
}
