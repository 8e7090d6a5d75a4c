import type { DrillResult } from '../../drill/drill-result.ts';
import type { JudgedHole } from '../../drill/planned-holes.ts';
import { circleLoop, mirrorPoint, mirrorRegion, type Region } from '../../geometry/plane/loop.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Casting, Hole } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { grindCautions } from '../../words/cautions.ts';
import { drillLine, holeName } from '../../words/drill-text.ts';
import { axisMark, axisName, shortName, titleOf } from '../../words/names.ts';
import { type DxfLayer, dxfOf } from '../dxf/dxf.ts';
import { colours, holeLayers, outlines } from '../markout/markout-dxf.ts';
import type { MarkoutSheet } from '../markout/markout-sheets.ts';
import { holeCross, punchCross } from '../markout/template-marks.ts';
import { templateSheet } from '../markout/template-sheet.ts';
import type { TemplateWords } from '../markout/template-words.ts';
import { barMm } from '../scene/check-bars.ts';
import { layer, outline, viewOf } from '../scene/marks.ts';
import type { View } from '../scene/scene.ts';

/** The holes to be drilled in a part, planned ones and those carried over, as one sheet at true scale; none without any. */
export function drillSheets(joint: Joint, drill: DrillResult): MarkoutSheet[] {
  return (['fixed', 'moving'] as const).flatMap((part): MarkoutSheet[] => {
    const holes = holesIn(drill, part);
    if (holes.length === 0) return [];
    return [
      {
        name: `drill-${part}`,
        purpose: `paper to lay on the face of ${shortName(joint[part])} and punch through`,
        scenes: (withBars) => [templateSheet(wordsOf(joint, drill, part), [viewOfPart(joint, part, holes)], withBars)],
        dxf: dxfOfPart(joint, part, holes),
        csv: null,
      },
    ];
  });
}

const holesIn = ({ planned, transfer }: DrillResult, part: Part): JudgedHole[] =>
  [...planned, ...transfer.marked].filter((judged) => judged.part === part);

/** Looking at the part's own mating face; that of the moving part is seen from the other side than the joint. */
interface Seen {
  readonly point: (p: Vec) => Vec;
  readonly region: (region: Region) => Region;
}

const seenAtFace = (part: Part): Seen =>
  part === 'fixed' ? { point: (p) => p, region: (region) => region } : { point: mirrorPoint, region: mirrorRegion };

const standing = ({ holes }: Casting, { point }: Seen): Hole[] =>
  holes.filter(({ kind }) => kind !== 'planned').map((hole) => ({ ...hole, at: point(hole.at) }));

/** What of a casting stands at its face, or all of it where nothing does. */
function faceOf({ sections }: Casting): Region {
  const face = sections.filter(({ depth }) => depth === null || (depth.fromMm <= 0 && depth.toMm > 0));
  return (face.length > 0 ? face : sections).flatMap(({ loops }) => loops);
}

function viewOfPart(joint: Joint, part: Part, holes: readonly JudgedHole[]): View {
  const seen = seenAtFace(part);
  const casting = joint[part];
  const { units } = joint.fit;
  return viewOf('drill', [
    layer('frame', [outline(seen.region(faceOf(casting)))]),
    ...standing(casting, seen).flatMap((hole) => holeCross(hole, units)),
    ...holes.flatMap((judged) =>
      punchCross(seen.point(judged.hole.at), (judged.diameterMm ?? 0) / 2, holeName(judged, units)),
    ),
    ...punchCross(vec(0, 0), 0, axisMark(joint)),
  ]);
}

function wordsOf(joint: Joint, drill: DrillResult, part: Part): TemplateWords {
  const casting = joint[part];
  const bad = holesIn(drill, part).filter(({ verdict }) => verdict === 'does-not' || verdict === 'undecided');
  return {
    title: `Holes to drill in ${shortName(casting)}`,
    warnings: [
      ...(bad.length === 0
        ? []
        : [`Do not drill ${bad.map(({ hole }) => `"${hole.id}"`).join(', ')} by this: ${drillLine(drill)}`]),
    ],
    about: [
      `${titleOf(joint)}. Part: ${casting.name}, casting number ${casting.castingNumber ?? 'not given'}.`,
      `Viewed from in front: you look at the mating face of ${shortName(casting)}. Hand: as the casting, not mirrored.`,
    ],
    steps: [
      'Cut the paper out round the dowels and holes that are there, lay it on the face, and bring two dowels into their circles.',
      'Punch through each cross, take the paper off, and measure each mark from two dowels before you drill: the table has the distances.',
    ],
    cautions: grindCautions(joint).slice(0, 2),
  };
}

function dxfOfPart(joint: Joint, part: Part, holes: readonly JudgedHole[]): string {
  const seen = seenAtFace(part);
  const casting = joint[part];
  const circles = (some: readonly JudgedHole[]): Region =>
    some.map(({ hole, diameterMm }) => circleLoop(seen.point(hole.at), Math.max(1, (diameterMm ?? 0) / 2)));
  const isPlanned = ({ hole }: JudgedHole): boolean => hole.kind === 'planned';
  const noteMm = 5;
  const words = [
    `Units: mm. The check bar is ${barMm} mm; ${axisName(joint)} is at 0, 0.`,
    `${titleOf(joint)}. Part: ${casting.name}. Looking at its mating face.`,
    ...holes
      .filter(({ verdict }) => verdict === 'does-not' || verdict === 'undecided')
      .map(({ hole }) => `DO NOT DRILL ${hole.id} by this.`),
  ];
  const notes: DxfLayer = {
    name: 'NOTES',
    colour: colours.cyan,
    shapes: [
      { kind: 'line', a: vec(0, 0), b: vec(barMm, 0) },
      ...words.map((text, i) => ({
        kind: 'text' as const,
        at: vec(0, -(i + 1) * 1.6 * noteMm),
        text,
        heightMm: noteMm,
      })),
      ...holes.map(({ hole }) => ({ kind: 'text' as const, at: seen.point(hole.at), text: hole.id, heightMm: noteMm })),
    ],
  };
  return dxfOf(
    [
      outlines('FACE', colours.black, seen.region(faceOf(casting))),
      ...holeLayers(standing(casting, seen)),
      outlines('DRILL-PLANNED', colours.red, circles(holes.filter(isPlanned))),
      outlines('DRILL-MARKED', colours.magenta, circles(holes.filter((hole) => !isPlanned(hole)))),
      notes,
    ].filter(({ shapes }) => shapes.length > 0),
  );
}
