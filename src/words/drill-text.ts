import type { DrillResult, Stretch } from '../drill/drill-result.ts';
import type { HoleWall, Stands } from '../drill/hole-metal.ts';
import type { JudgedHole } from '../drill/planned-holes.ts';
import type { TransferredHole } from '../drill/transfer.ts';
import { bareGivenLength, figure, fineLength, givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { grindCautions } from './cautions.ts';
import { columns, inWords, listed, paragraph, wrapped } from './layout.ts';
import { shortName, titleOf } from './names.ts';
import { noticeText } from './notices.ts';
import { depthText, placeText } from './places.ts';
import { reasonText } from './reasons.ts';
import { comparedText, degreesOf, degreesText, heldToMm } from './units.ts';

/** Holes to be drilled as a builder reads them: is there metal, and where do those of the other part come. */
export function drillText(joint: Joint, drill: DrillResult): string {
  return [
    ...wrapped(drillLine(drill), ''),
    titleOf(joint),
    ...(['fixed', 'moving'] as const).flatMap((part) =>
      paragraph(`To drill in ${shortName(joint[part])}`, partLines(joint, drill, part)),
    ),
    ...paragraph('Not carried over', listed(refusalTexts(drill))),
    ...paragraph('Holes that meet though nobody paired them', listed(metTexts(joint, drill))),
    ...paragraph('Bolts that remain', listed(boltTexts(joint, drill))),
    ...paragraph('Warnings', listed(joint.notices.map((notice) => noticeText(notice, joint.fit.units)))),
    ...paragraph('What this rests on', listed(groundTexts(joint, drill))),
    ...paragraph('Next', listed(nextTexts(joint, drill))),
    ...paragraph('Take care', listed(grindCautions(joint))),
    '',
  ].join('\n');
}

/** What was found, in one line, the verdict first. */
export function drillLine({ planned, transfer, refusal, handIsShown }: DrillResult): string {
  const named = (verdict: JudgedHole['verdict']): string =>
    inWords(planned.filter((hole) => hole.verdict === verdict).map(({ hole }) => `"${hole.id}"`));
  const has = (verdict: JudgedHole['verdict']): boolean => planned.some((hole) => hole.verdict === verdict);
  if (has('does-not')) return `NO METAL for ${named('does-not')} as planned.`;
  if (has('undecided')) return `UNDECIDED: it cannot be told whether there is metal for ${named('undecided')}.`;
  if (planned.length > 0)
    return has('as-traced')
      ? `THERE IS METAL for every planned hole as traced; the errors could eat it up at ${named('as-traced')}.`
      : 'THERE IS METAL for every planned hole, even with every error against you.';
  if (refusal !== null) return `UNDECIDED: nothing is planned, and ${refusalText(refusal)}.`;
  const { marked } = transfer;
  if (marked.length === 0) return 'NOTHING TO DRILL: no hole is "planned", and every bolt hole has its partner.';
  const one = marked.length === 1;
  const hand = handIsShown ? '' : '; but nothing shows that neither drawing is mirrored';
  return `NOTHING PLANNED: no hole is "planned". ${one ? 'One bolt hole has' : `${marked.length} bolt holes have`} no partner, and ${one ? 'is' : 'are'} marked on the other part, ${metalForText(marked)}${hand}.`;
}

/** For how many of the holes marked there is metal. */
function metalForText(marked: readonly JudgedHole[]): string {
  const stands = marked.filter(({ verdict }) => verdict === 'does' || verdict === 'as-traced').length;
  if (stands === marked.length) return `where there is metal for ${stands === 1 ? 'it' : 'each'}`;
  return stands === 0 ? 'where there is metal for none' : `where there is metal for ${stands} of them`;
}

/** Why no bolt hole is marked on the other part: said where one would look for them. */
const refusalTexts = ({ refusal }: DrillResult): string[] =>
  refusal === null ? [] : [`Bolt holes are marked on neither part: ${refusalText(refusal)}.`];

const refusalText = (refusal: NonNullable<DrillResult['refusal']>): string =>
  refusal === 'too-few-dowels'
    ? 'no hole is carried from one part to the other, since fewer than two dowels are paired'
    : reasonText(refusal);

const verdicts: Readonly<Record<JudgedHole['verdict'], string>> = {
  does: 'does, at worst too',
  'as-traced': 'does as traced',
  'does-not': 'IT DOES NOT DO',
  undecided: 'UNDECIDED',
};

const stands: Readonly<Record<Exclude<Stands, 'in-metal'>, string>> = {
  'over-the-edge': 'it breaks out over the edge',
  'in-the-air': 'there is no metal',
  'not-traced': 'nobody traced the casting there',
  'no-depth': 'what would be about it has no depth, so that nobody says how deep it goes',
};

/** The same for a table each, headings first: where holes go, what is beside them, and what stands against any. */
export function drillTables(
  joint: Joint,
  { planned, transfer }: DrillResult,
  part: Part,
): { readonly places: string[][]; readonly walls: string[][]; readonly against: string[] } | null {
  const holes = [...planned, ...transfer.marked].filter((judged) => judged.part === part);
  if (holes.length === 0) return null;
  return {
    places: placeRows(joint, part, holes),
    walls: wallRows(joint, holes),
    against: [
      ...holes.filter(({ verdict }) => verdict !== 'does').map((judged) => againstText(joint, judged)),
      ...holes.filter(({ verdict }) => verdict === 'does').flatMap((judged) => headTexts(joint, judged)),
    ],
  };
}

/** The holes to be drilled in one part: where they go, what is beside them, and in words what stands against any. */
function partLines(joint: Joint, drill: DrillResult, part: Part): string[] {
  const tables = drillTables(joint, drill, part);
  if (tables === null) return [];
  return [...columns(tables.places), '', ...columns(tables.walls), ...listed(tables.against)];
}

const bare = (mm: number, units: Units): string => fineLength(mm, units).replace(` ${units}`, '');

function placeRows({ fit: { units }, ...parts }: Joint, part: Part, holes: readonly JudgedHole[]): string[][] {
  const own = parts[part].units;
  const from = holes[0]?.dividers.map(({ from: name }) => name) ?? [];
  return [
    ['hole', 'from', 'Ø', `x (${own})`, 'y', `radius (${units})`, 'angle', ...from.map((name) => `from ${name}`)],
    ...holes.map(({ hole, diameterMm, inDrawing, radiusMm, angleRad, dividers }) => [
      hole.id,
      hole.kind === 'planned' ? 'planned' : shortName(parts[part === 'fixed' ? 'moving' : 'fixed']),
      diameterMm === null ? '?' : bareGivenLength(diameterMm, units),
      bare(inDrawing.x, own),
      bare(inDrawing.y, own),
      bare(radiusMm, units),
      `${figure(degreesOf(angleRad), 2)}°`,
      ...from.map((name) => {
        const set = dividers.find((one) => one.from === name);
        return set === undefined ? '' : bare(set.mm, units);
      }),
    ]),
  ];
}

function wallRows({ fit: { units } }: Joint, holes: readonly JudgedHole[]): string[][] {
  return [
    ['hole', 'least wall', 'at worst', 'wanted', 'to', ''],
    ...holes.map(({ hole, metal, verdict }) => {
      const [wall] = metal?.walls ?? [];
      const told =
        wall === undefined || metal?.stands === 'in-the-air'
          ? ['', '', '', '']
          : [
              wall.wallMm < 0 ? 'breaks in' : comparedText(wall.wallMm, wall.wantedMm, units),
              wall.wallMm < wall.errorMm ? 'none' : comparedText(wall.wallMm - wall.errorMm, wall.wantedMm, units),
              givenLength(wall.wantedMm, units),
              wall.beside === 'floor' ? `${wall.name}, its floor` : wall.name,
            ];
      return [hole.id, ...told, verdicts[verdict]];
    }),
  ];
}

function againstText(joint: Joint, judged: JudgedHole | TransferredHole): string {
  const { units } = joint.fit;
  const { hole } = judged;
  const depth = hole.depth === null ? '' : `, ${depthText(hole.depth, units)}`;
  const largestMm = 'largestMm' in judged ? judged.largestMm : null;
  const moveMm = 'moveMm' in judged ? judged.moveMm : null;
  return [
    `"${hole.id}"${depth}: ${inWords(metalTexts(joint, judged))}.`,
    ...(largestMm === null
      ? []
      : [`The largest that would do there as traced is Ø${lengthText(Math.floor(largestMm * 10) / 10, units)}.`]),
    ...(moveMm === null || moveMm === 0
      ? []
      : [
          `As traced it would stand right ${lengthText(moveMm, units)} aside: a slot so much longer serves, or that hole moved.`,
        ]),
  ].join(' ');
}

/** A hole as it stands on a sheet: its name and size, and where it is not to be drilled, that. */
export const holeName = ({ hole, diameterMm, verdict }: JudgedHole, units: Units): string =>
  `${hole.id}${diameterMm === null ? '' : ` Ø${givenLength(diameterMm, units)}`}${verdict === 'does-not' || verdict === 'undecided' ? ': NO' : ''}`;

/** What stands against a hole, each in a few words. */
function metalTexts(joint: Joint, judged: JudgedHole): string[] {
  const { units } = joint.fit;
  const { metal, diameterMm } = judged;
  if (diameterMm === null) return ['state its diameter or its thread'];
  if (metal === null) return [];
  const short = metal.walls.filter((wall) => !keepsWallAtWorst(wall));
  return [
    ...(metal.stands === 'in-metal' ? [] : [stands[metal.stands]]),
    ...(metal.stands === 'in-the-air' ? [] : short.map((wall) => wallText(joint, wall))),
    ...metal.without.map((depth) => `no metal is traced ${depthText(depth, units)}: trace on, or state less depth`),
    ...metal.unsized.map((id) => `"${id}" is near and has no size: state it`),
    ...headFaults(joint, judged),
  ];
}

const keepsWallAtWorst = ({ wallMm, errorMm, wantedMm }: HoleWall): boolean => wallMm - errorMm >= wantedMm - heldToMm;

function headFaults(joint: Joint, { spotFace, headRoom }: JudgedHole): string[] {
  const { units } = joint.fit;
  return [
    ...(spotFace === null || spotFace.spareMm >= spotFace.errorMm
      ? []
      : [
          spotFace.spareMm >= 0
            ? `a spot face of Ø${givenLength(spotFace.acrossMm, units)} has only ${lengthText(spotFace.spareMm, units)} to spare, less than the tracing error`
            : `a spot face of Ø${givenLength(spotFace.acrossMm, units)} on ${shortName(joint[spotFace.part])}, ${givenLength(spotFace.depthMm, units)} from its face, hangs over the edge by ${lengthText(-spotFace.spareMm, units)}`,
        ]),
    ...(headRoom === null || headRoom.gapMm >= headRoom.errorMm
      ? []
      : [
          headRoom.gapMm < 0
            ? `"${headRoom.section}" stands ${lengthText(-headRoom.gapMm, units)} within the Ø${givenLength(headRoom.acrossMm, units)} that head or socket takes`
            : `head or socket, Ø${givenLength(headRoom.acrossMm, units)}, has only ${lengthText(headRoom.gapMm, units)} to "${headRoom.section}", less than its tracing error`,
        ]),
  ];
}

/** What there is for the head of a bolt, where it was asked about. */
function headTexts({ fit: { units } }: Joint, { hole, spotFace, headRoom }: JudgedHole): string[] {
  const told = [
    ...(spotFace === null
      ? []
      : [
          `metal all round a spot face of Ø${givenLength(spotFace.acrossMm, units)}, ${lengthText(spotFace.spareMm, units)} to spare`,
        ]),
    ...(headRoom === null
      ? []
      : [
          `${lengthText(headRoom.gapMm, units)} from the Ø${givenLength(headRoom.acrossMm, units)} that head or socket takes to "${headRoom.section}"`,
        ]),
  ];
  return told.length === 0 ? [] : [`"${hole.id}": ${inWords(told)}.`];
}

function wallText(joint: Joint, { beside, name, isCut, wallMm, wantedMm, errorMm, at, depth }: HoleWall): string {
  const { units } = joint.fit;
  if (beside === 'floor')
    return `the floor under it in "${name}" is ${wallMm < 0 ? 'broken through by the point of the drill' : `${comparedText(wallMm, wantedMm, units)} thick under the drill's point, ${lengthText(Math.max(0, wallMm - errorMm), units)} at worst, ${givenLength(wantedMm, units)} wanted`}`;
  const what = beside === 'outline' ? `the edge of "${name}"${isCut ? ', as it is cut' : ''}` : `"${name}"`;
  const where = `${placeText(at, joint)}${depth === null ? '' : `, ${depthText(depth, units)}`}`;
  if (wallMm < 0) return `it breaks into ${what}, ${lengthText(-wallMm, units)} deep, ${where}`;
  return `${comparedText(wallMm, wantedMm, units)} to ${what}, ${lengthText(Math.max(0, wallMm - errorMm), units)} at worst, ${givenLength(wantedMm, units)} wanted; ${where}`;
}

export const metTexts = (joint: Joint, { transfer }: DrillResult): string[] =>
  transfer.met.map(({ of, hole, met, offMm }) => {
    const [mine, other] = of === 'fixed' ? [joint.fixed, joint.moving] : [joint.moving, joint.fixed];
    return `"${hole}" of ${shortName(mine)} comes upon "${met}" of ${shortName(other)}, ${lengthText(offMm, joint.fit.units)} off. Pair them under "bolts", and the check looks at them.`;
  });

export function boltTexts(
  { fit: { units } }: Joint,
  { bolts: { paired, met, marked, longest }, refusal }: DrillResult,
): string[] {
  if (refusal !== null) return [];
  const count = `${paired} paired, ${met} that meet, ${marked} marked with metal for them.`;
  return [
    count,
    ...(longest === null ? [] : [stretchText(longest, units)]),
    'That is information and no approval: whether so many bolts, so spread, hold is for the maker of the parts, or whoever is licensed to say.',
  ];
}

const stretchText = ({ from, to, mm, rad }: Stretch, units: Units): string =>
  `The longest stretch without one is ${lengthText(mm, units)}, ${degreesText(degreesOf(rad))} about the axis, from "${from}" to "${to}".`;

function groundTexts({ fit: { units } }: Joint, { rules, isCut, refusal, handIsShown }: DrillResult): string[] {
  return [
    `Exact for the outlines as traced. Wanted is ${rules.edgeFactor} diameters from the middle of a hole to an edge (common practice, no source), or the hole's own "keepWall"; beside hollows and other holes what they keep.`,
    `At worst has the tracing error of each outline, ${givenLength(rules.drillErrorMm, units)} that a drill runs off (common practice), and of a hole carried over the play and fit of the dowels.`,
    isCut
      ? 'Judged in the metal that the planned cut leaves.'
      : 'Judged in the castings as they are: nothing is cut off them.',
    ...(refusal === null ? ['Holes are carried over through the dowels, both parts as they lie home.'] : []),
    ...(handIsShown
      ? []
      : ['That neither drawing is mirrored is not shown by the holes: check one hole by hand before you drill.']),
    'Walls of castings hide pores, and cores that were shifted: probe before you drill deep.',
  ];
}

function nextTexts({ fit }: Joint, { planned, transfer }: DrillResult): string[] {
  const fails = planned.some(({ verdict }) => verdict === 'does-not' || verdict === 'undecided');
  return [
    ...(fails ? ['Move the hole, make it smaller, or trace the edge again; then ask again before you drill.'] : []),
    ...(transfer.marked.length === 0
      ? []
      : [
          'To drill one that is marked, add it to that part as a hole of kind "planned" with its diameter and depth, and ask again.',
          `Templates, DXF and a table of places: fettle drill ${fit.file} -o holes`,
        ]),
    'The drill and the depth of a thread: fettle hole M12x1.75 --material grey-iron',
  ];
}
