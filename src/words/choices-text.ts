import { fineLength, givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { Choice, Choices, CutterChoice, PartChoice } from '../plan/choices/choices.ts';
import type { LeastWall } from '../plan/choices/least-wall.ts';
import { sharedText } from './alternative-text.ts';
import { grindCautions } from './cautions.ts';
import { againstTexts } from './hindrance-text.ts';
import { columns, inWords, listed, paragraph, sentence, wrapped } from './layout.ts';
import { shortName, titleOf } from './names.ts';
import { reasonSteps, reasonText } from './reasons.ts';
import { sourceText } from './source-text.ts';
import { percentText, weighedText } from './units.ts';

/** Which part to cut and with which cutter, side by side: what `fettle grind --choices` says, in the units of the fit. */
export const choicesText = (joint: Joint, choices: Choices): string =>
  [
    ...wrapped(choicesLine(joint, choices), ''),
    titleOf(joint),
    ...paragraph(partHeading(joint), partLines(joint, choices)),
    ...paragraph(`Which cutter, ${cutText(joint, joint.fit.cut)}`, cutterLines(joint, choices)),
    ...paragraph('What this rests on', listed(groundTexts(joint, choices))),
    ...paragraph('Next', listed(nextTexts(joint, choices))),
    ...paragraph('Take care', listed(grindCautions(joint))),
    '',
  ].join('\n');

/** Of amounts that differ by less none is the least: one part is then named before both. */
const alike = 1.005;

/** What there is to choose, in one line, the word first. */
export function choicesLine(joint: Joint, { reason, parts, cutters, kindestMm }: Choices): string {
  const { units } = joint.fit;
  if (reason !== null) return `NOT PLANNED: ${reasonText(reason)}.`;
  if (parts.some(({ holds, cutsNothing }) => holds && cutsNothing))
    return 'NOTHING TO TAKE OFF: the clearance you asked for is there already.';
  const holding = parts.filter(({ holds }) => holds);
  const largest =
    kindestMm === null ? '' : `; a cutter of up to ${givenLength(kindestMm, units)} takes hardly more than the least`;
  const leastMm3 = Math.min(...holding.map(({ volumeMm3 }) => volumeMm3 ?? 0));
  const least = holding.find(({ volumeMm3 }) => (volumeMm3 ?? 0) <= alike * leastMm3);
  if (least !== undefined) {
    const isLeast = holding.length > 1 && holding.every(({ volumeMm3 }) => volumeMm3 !== null);
    return `A PLAN HOLDS: ${cutText(joint, least.cut)}${isLeast ? ' takes least,' : ' takes'} ${metalText(least, units)}${largest}.`;
  }
  return cutters.some(({ holds }) => holds)
    ? `A PLAN HOLDS, with another cutter${largest}.`
    : 'NO PLAN HOLDS, whichever part is cut and whichever of these cutters cuts it.';
}

const cutText = (joint: Joint, cut: PartChoice['cut']): string =>
  cut === 'both' ? `cutting both, ${sharedText(joint)}` : `cutting ${shortName(joint[cut])}`;

function partHeading({ fit: { cutter, units } }: Joint): string {
  if (cutter === null) return 'Which part, whatever the cutter';
  return `Which part, with the ${cutter.nose}-nosed cutter of radius ${givenLength(cutter.radiusMm, units)}`;
}

function partLines(joint: Joint, { parts }: Choices): string[] {
  if (parts.length === 0) return [];
  const { units } = joint.fit;
  const rows = parts.map((part) => [
    cutText(joint, part.cut),
    metalText(part, units),
    wallText(part.leastWall, units),
    holdsText(part),
  ]);
  const against = parts.flatMap((part) =>
    part.against.length === 0
      ? []
      : [`${sentence(cutText(joint, part.cut))}: ${inWords(againstTexts(part.against, units))}.`],
  );
  return [
    ...columns([['', 'metal off', 'least wall, at worst', ''], ...rows]),
    ...listed([...against, ...onlyOneTexts(joint)]),
  ];
}

/** Both are one alone where the other offers nothing. */
const onlyOneTexts = (joint: Joint): string[] =>
  (['fixed', 'moving'] as const)
    .filter((part) => joint[part].sections.every(({ mayCut }) => !mayCut))
    .map((part) => `Nothing of ${shortName(joint[part])} is offered to the grinder ("mayCut").`);

function cutterLines({ fit: { units } }: Joint, { cutters, kindestMm }: Choices): string[] {
  if (cutters.length === 0) return [];
  const rows = cutters.map((cutter) => [
    givenLength(cutter.radiusMm, units),
    metalText(cutter, units),
    cutter.moreThanLeast === null ? 'not known' : moreText(cutter.moreThanLeast),
    cutter.leastFilletMm === null ? 'none' : lengthText(cutter.leastFilletMm, units),
    cutter.stressRatio === null ? 'not known' : cutter.stressRatio.toFixed(2),
    holdsText(cutter),
  ]);
  const undone = cutters.flatMap((cutter) => {
    const texts = undoneTexts(cutter, units);
    return texts.length === 0 ? [] : [`${givenLength(cutter.radiusMm, units)}: ${texts.join('; ')}.`];
  });
  const kindest =
    kindestMm === null
      ? []
      : [
          `Of those that hold, ${givenLength(kindestMm, units)} is the largest that takes at most 5 % more metal than the least. A larger fillet is kinder to the casting.`,
        ];
  return [
    ...columns([['radius', 'metal off', 'beyond the least', 'least fillet', 'stress', ''], ...rows]),
    ...listed([...undone, ...kindest]),
  ];
}

const moreText = (share: number): string => (share < 5e-3 && share > -5e-3 ? 'nothing' : percentText(share));

const holdsText = ({ holds }: Choice): string => (holds ? 'holds' : 'does not hold');

/** What a choice takes off; where a section that is cut has no depth that is not known, which is not nothing. */
function metalText({ cutsNothing, volumeMm3, massG }: Choice, units: Units): string {
  if (cutsNothing) return 'nothing';
  return volumeMm3 === null ? 'not known: no depth' : weighedText(volumeMm3, massG, units);
}

function wallText(wall: LeastWall | null, units: Units): string {
  if (wall === null) return 'none near';
  return `${wall.wallMm > 0 ? lengthText(wall.wallMm, units) : 'perhaps nothing'}, ${wallName(wall)}`;
}

function wallName({ of, id }: LeastWall): string {
  switch (of) {
    case 'hollow':
      return id;
    case 'hole':
      return `hole ${id}`;
    case 'section':
      return `"${id}" itself`;
    case 'reading':
      return `read at "${id}"`;
  }
}

/** What a cutter leaves standing, where it does not get in, and what else stands against its plan. */
function undoneTexts({ leaves, narrow, against }: CutterChoice, units: Units): string[] {
  const texts = [
    ...leaves.map(
      ({ section, atMm, mm, against: by }) =>
        `it leaves a fillet ${fineLength(mm, units)} high in "${section}" at ${givenLength(atMm, units)} from the face${by === null ? '' : `, against "${by}"`}`,
    ),
    ...narrow.map(
      ({ section, gapMm }) =>
        `it does not get into "${section}" from the side, where the gap is ${lengthText(gapMm, units)} wide`,
    ),
    // a fillet is told above with how high it is
    ...againstTexts(
      against.filter(({ code }) => code !== 'fillet' || leaves.length === 0),
      units,
    ),
  ];
  return [...new Set(texts)];
}

function groundTexts({ fit: { units, cutter } }: Joint, { cutters, nose, areListed, reference }: Choices): string[] {
  if (cutters.length === 0) return [];
  const { bar, covers, source } = reference;
  const [smallest] = cutters;
  return [
    areListed
      ? 'The radii are those the fit lists under "cutters".'
      : `The radii are those in common use, by common practice and from no standard${cutter === null ? '' : ', with the one of the fit'}: list your own under "cutters" in the fit.`,
    'The least fillet is that of the inward corners of the edge, in the plane, from the cut as planned.',
    nose === 'ball'
      ? 'Where a cut ends within the metal along the axis, the ball leaves its own radius there.'
      : 'Where a cut ends within the metal along the axis, a flat nose leaves a sharp corner there, whatever its radius.',
    `Stress: that of a fillet of the radius beside one of ${givenLength(smallest?.radiusMm ?? 0, units)}, as a ratio, on a bar of ${givenLength(bar.wideMm, units)} stepped to ${givenLength(bar.narrowMm, units)} in tension (${sourceText(source)}; for radii from ${givenLength(covers.leastRadiusMm, units)} to ${givenLength(covers.mostRadiusMm, units)}). It compares fillets and makes no strength claim: the casting is no such bar.`,
  ];
}

function nextTexts({ fit: { file } }: Joint, { reason, parts, cutters }: Choices): string[] {
  if (reason !== null) return [...reasonSteps(reason), `Check again: fettle check ${file}`];
  if (parts.some(({ holds, cutsNothing }) => holds && cutsNothing)) return ['Offer it up.'];
  return [
    ...(cutters.length === 0 ? ['Offer more to the grinder ("mayCut"), or cut the other part ("cut").'] : []),
    `Write the part and the radius you choose into the fit ("cut", "cutter"), then plan it whole: fettle grind ${file}`,
  ];
}
