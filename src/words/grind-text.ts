import type { GrindAnswer, PartCut } from '../answers/grind-answer.ts';
import type { Material } from '../job/casting.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { PlanFacts } from '../plan/plan-facts.ts';
import { alternativeTexts } from './alternative-text.ts';
import { checkCautions, grindCautions } from './cautions.ts';
import { groundsOf } from './check-text.ts';
import { cutterTexts } from './cutter-text.ts';
import { inWords, listed, paragraph, wrapped } from './layout.ts';
import { measureLines } from './measure-text.ts';
import { shortName, titleOf } from './names.ts';
import { type CutOfPart, partCuts, textsByPart } from './part-cuts.ts';
import { afterCutOf, planReason, planReasonTexts, planWarningTexts } from './plan-answer.ts';
import { keepOffLines, takeOffLines, uncuredLines, wallLines } from './plan-text.ts';
import { reasonSteps, reasonText } from './reasons.ts';
import { straightTexts } from './straight-text.ts';
import { comparedText, massText, volumeText } from './units.ts';

/** A cut plan as a builder reads it: the verdict, what comes off where, what is left, and what to do next. */
export function grindText(joint: Joint, plan: GrindAnswer, facts: PlanFacts): string {
  const cuts = partCuts(joint, plan);
  return [
    ...wrapped(planLine(joint, plan), ''),
    titleOf(joint),
    ...paragraph('Why nothing is planned', listed(planReasonTexts(plan))),
    ...cuts.flatMap(({ casting, cut }, i) =>
      paragraph(`Take off ${shortName(casting)}`, takeOffLines(joint, cut, facts[i] ?? [])),
    ),
    ...paragraph('The cutter', listed(cutterTexts(joint, plan))),
    ...paragraph('Straight edges', listed(textsByPart(joint, plan, ({ cut }) => straightTexts(joint, cut), 'first'))),
    ...paragraph('Left standing in the way', uncuredLines(joint, plan)),
    ...paragraph(nothingToCut(plan) ? 'As it stands' : 'After the cut', measureLines(joint, afterCutOf(plan))),
    ...paragraph('Walls left behind it', wallLines(joint, plan)),
    ...cuts.flatMap(({ casting }) =>
      paragraph(
        cuts.length === 1 ? 'Not to be cut' : `Not to be cut of ${shortName(casting)}`,
        keepOffLines(joint, casting),
      ),
    ),
    ...paragraph('Warnings', listed(planWarningTexts(plan))),
    ...paragraph('What this rests on', listed([...boundsOf(joint, plan), ...groundsOf(joint, afterCutOf(plan))])),
    ...paragraph('What else would give', listed(alternativeTexts(joint, plan))),
    ...paragraph('Next', listed(planSteps(joint, plan))),
    ...paragraph('Take care', listed(nothingToCut(plan) ? checkCautions(joint) : grindCautions(joint))),
  ].join('\n');
}

export const nothingToCut = ({ sections, movingCut }: GrindAnswer): boolean =>
  sections.length === 0 && (movingCut?.sections ?? []).length === 0;

/** The verdict of a plan in one line, the word first. */
export function planLine(joint: Joint, plan: GrindAnswer): string {
  const reason = planReason(plan);
  if (reason !== null) return `NOT PLANNED: ${reasonText(reason)}.`;
  const cuts = partCuts(joint, plan);
  if (nothingToCut(plan)) {
    return plan.holds
      ? 'NOTHING TO TAKE OFF: the clearance you asked for is there already.'
      : `NO PLAN: nothing that may be cut on ${cuts.map(({ casting }) => shortName(casting)).join(' or ')} would cure it.`;
  }
  const takeOff = inWords(cuts.filter(({ cut }) => cut.sections.length > 0).map((cut) => offText(joint, cut)));
  if (plan.holds) return `THE PLAN HOLDS: take ${takeOff}.`;
  return `THE PLAN DOES NOT HOLD: ${inWords(hindrances(joint, plan))}. It would take ${takeOff}.`;
}

/** How much comes off one casting: `20.9 g (2.9 cm³) of grey iron off Iron four`. */
function offText({ fit }: Joint, { casting, cut }: CutOfPart): string {
  const { material } = casting;
  const of = material === null ? '' : ` of ${materialText(material)}`;
  return `${amountText(cut, fit.units)}${of} off ${shortName(casting)}`;
}

/** What stands against a plan, each in a few words; there is always something. */
export function hindrances(joint: Joint, plan: GrindAnswer): string[] {
  const left = plan.uncured.map(({ section }) => `"${section}" still stands in the way`);
  const short = shortfalls(joint, plan);
  const cuts = partCuts(joint, plan).map(({ cut }) => cut);
  const fillets = short.length === 0 ? [] : cuts.flatMap(filletHindrances);
  // bands of one section may be held up by the same
  const said = [...new Set([...cuts.flatMap(cutHindrances), ...fillets, ...left])];
  return said.length > 0 ? said : short;
}

/** Where what is left does not keep the clearance asked, and how near it comes. */
function shortfalls({ fit: { clearance, units } }: Joint, { afterCut: { home, install } }: GrindAnswer): string[] {
  const places = [
    { where: 'at home', measure: home, askedMm: clearance.homeMm },
    { where: 'on the way in', measure: install, askedMm: clearance.wayInMm },
  ];
  return places.flatMap(({ where, measure, askedMm }) => {
    if (measure === null) return [];
    const { state, clearanceMm } = measure;
    if (state === 'undecided') return [`what is left is undecided ${where}`];
    if (state === 'fouls') return [`what is left still fouls ${where}`];
    if (clearanceMm === null || clearanceMm >= askedMm - heldToMm) return [];
    const [kept, asked] = [comparedText(clearanceMm, askedMm, units), givenLength(askedMm, units)];
    return [`what is left keeps only ${kept} of the ${asked} asked ${where}`];
  });
}

/** An asked clearance is held to this. */
const heldToMm = 1e-3;

const filletHindrances = ({ cutter }: PartCut): string[] =>
  (cutter?.ends ?? [])
    .filter(({ what }) => what === 'left' || what === 'against')
    .map(
      ({ section, against }) =>
        `the cutter leaves a fillet in "${section}"${against === null ? '' : `, against "${against}"`}`,
    );

function cutHindrances({ walls, thin, readings, severed, sections }: PartCut): string[] {
  const thinWalls = walls
    .filter(({ holds }) => holds === false)
    .map(({ hollow, nominalMm }) =>
      nominalMm <= 0 ? `the cut breaks into "${hollow}"` : `the wall to "${hollow}" is too thin`,
    );
  const thinMetal = thin
    .filter(({ holds }) => !holds)
    .map(({ section, along }) =>
      along === 'crank' ? `"${section}" would be too thin along the crank` : `"${section}" would be too thin`,
    );
  const readWalls = readings
    .filter(({ holds }) => holds === false)
    .map(({ section }) => `the wall read at "${section}" would be too thin`);
  const parted = severed.map(({ section }) => `a piece of "${section}" would come off`);
  const gone = sections.filter(({ nothingLeft }) => nothingLeft);
  return [
    ...thinWalls,
    ...thinMetal,
    ...readWalls,
    ...parted,
    ...gone.map(({ id }) => `nothing would be left of "${id}"`),
  ];
}

function amountText({ massG, volumeMm3 }: PartCut, units: Units): string {
  if (volumeMm3 === null) return 'metal';
  const volume = volumeText(volumeMm3, units);
  return massG === null ? volume : `${massText(massG)} (${volume})`;
}

const materialText = ({ name }: Material): string => name.replaceAll('-', ' ');

export function boundsOf(joint: Joint, plan: GrindAnswer): string[] {
  if (nothingToCut(plan)) return [];
  const { units } = joint.fit;
  const boundsMm = partCuts(joint, plan).map(({ cut }) => cut.boundMm);
  const more = lengthText(Math.max(...boundsMm, leastSaidMm[units]), units);
  return [`No line leaves less room than asked; where a line is not exact it takes off less than ${more} more.`];
}

/** Less than this is not told apart by a builder. */
const leastSaidMm = { mm: 0.1, in: 0.254 } as const;

export function planSteps({ fit }: Joint, plan: GrindAnswer): string[] {
  const reason = planReason(plan);
  if (reason !== null) return reasonSteps(reason, fit.file);
  const draw = `The lines on a drawing: fettle draw ${fit.file} -o fit.svg`;
  if (nothingToCut(plan)) {
    return plan.holds
      ? ['Offer it up.']
      : [`Offer more to the grinder ("mayCut"), or cut the other part ("cut"). ${draw}`];
  }
  if (!plan.holds) {
    return [
      'Do not start cutting: settle what stands against the plan, then run it again.',
      'What may help: a smaller "clearance", another turn or stand-off in "offerUp", the other part ("cut"), or tracing again with less error.',
      draw,
    ];
  }
  return [
    draw,
    'Measure every wall named above before you start.',
    'Grind to the first line and offer up. Go on only where it marks, a little at a time, and never past the last line.',
    'Write down what you took off where, and check again with what you measure.',
  ];
}
