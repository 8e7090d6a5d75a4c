import { edgesOf } from '../../geometry/plane/loop.ts';
import { add, length, scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Polygons } from '../../geometry/polygons/polygons.ts';
import { givenLength, lengthText } from '../../job/length-text.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { plyMm } from '../../markout/marking-out-plate.ts';
import {
  type GaugeTouch,
  type SwingGauge,
  type SwingPiece,
  type TurnScale,
  thinnestPieceMm,
} from '../../markout/marking-out-swing.ts';
import { plyOutline } from '../../markout/ply-outline.ts';
import { inWords } from '../../words/layout.ts';
import { axisMark, axisName, shortName } from '../../words/names.ts';
import { rangeText, turnRange } from '../../words/places.ts';
import { degreesOf, degreesText, turnText } from '../../words/units.ts';
import { forgivenText } from '../../words/wander-text.ts';
import { target } from '../fit/closest-place.ts';
import { briefDepth } from '../fit/depth-words.ts';
import { layer, line, outline, text, viewOf } from '../scene/marks.ts';
import type { Layer, Scene, TextMark, View } from '../scene/scene.ts';
import { asRun, holeWords, insideOf, plyEdge, punchCross } from './template-marks.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { plyWords, templateWords } from './template-words.ts';

const title = 'Swing gauge';

const otherName = ({ joint, cut }: Bench): string => shortName(cut === 'fixed' ? joint.moving : joint.fixed);

/** The sections that pass the cut, with the asked clearance round them, to glue on ply. */
export function swingPieces(bench: Bench, gauge: SwingGauge, withBars: boolean): Scene {
  const { units } = bench.joint.fit;
  const words = templateWords(bench, `${title}: the sections of ${otherName(bench)} that pass the cut`, [
    `Glue on ${plyWords(bench)} and cut to the wide line: the section ${bench.both ? 'as its own cut leaves it' : 'as traced'} (narrow) with ${givenLength(gauge.pieces[0]?.clearanceMm ?? 0, units)} round it, the clearance asked on the way in.`,
    ...sectionsOf(gauge).map(
      (piece) => `${piece.section}, ${briefDepth(piece.depth, units)}: ${heldWords(piece, bench)}`,
    ),
    'Fix each piece to the plate by blocks, in the place the plate shows, this side up.',
    ...(gauge.touch === null
      ? []
      : [`The target on ${gauge.touch.piece} is where it should touch first: ${touchWords(gauge.touch, bench)}.`]),
    ...(gauge.tooThin.length === 0 ? [] : [tooThinWords(gauge, bench)]),
  ]);
  return templateSheet(
    words,
    gauge.pieces.map((piece) => pieceView(bench, piece, gauge.touch)),
    withBars,
  );
}

const sectionsOf = ({ pieces }: SwingGauge): SwingPiece[] =>
  pieces.filter(
    ({ section, depth }, i) => pieces.findIndex((piece) => piece.section === section && piece.depth === depth) === i,
  );

const tooThinWords = ({ tooThin }: SwingGauge, { joint }: Bench): string =>
  `Left out: pieces of ${inWords(tooThin)} that are nowhere wider than ${givenLength(thinnestPieceMm, joint.fit.units)}, too thin to cut from ply. This gauge does not prove the cut where they pass.`;

/** When a gauge first touches, and what. */
const touchWords = ({ section, turnRad, standOffMm }: GaugeTouch, { joint }: Bench): string =>
  `at a turn of ${turnText(turnRad)}, stand-off ${lengthText(standOffMm, joint.fit.units)}, on "${section}"`;

/** How far from the plate's underside, which stands for the other part's face, a piece is held. */
function heldWords({ depth }: SwingPiece, { joint }: Bench): string {
  const { units } = joint.fit;
  if (depth === null) return 'reaches through every depth: one piece under the plate, one over it.';
  const { fromMm, toMm } = depth;
  const hung = toMm <= 0;
  const ends = hung ? [0 - toMm, 0 - fromMm - plyMm] : [Math.max(0, fromMm), toMm - plyMm];
  const heights = [...new Set(ends.map((mm) => givenLength(Math.max(0, mm), units)))].join(', and another ');
  return `one piece ${heights} ${hung ? "under the plate's underside" : "over the plate's underside"}.`;
}

const nameMm = 5;

const targetMm = 4;

function pieceView({ mirrored }: Bench, { name, traced, outline: edge }: SwingPiece, touch: GaugeTouch | null): View {
  const { x, y } = insideOf(edge);
  return viewOf(`piece-${name}`, [
    layer(
      'moving-beyond',
      traced.map(({ points }) => asRun(points)),
    ),
    wideEdge(edge),
    layer('first-touch', touch?.piece === name ? target(touch.at, targetMm) : []),
    layer('text', [
      text(vec(x, y - 0.3 * nameMm), name, nameMm, { anchor: 'middle', bold: true }),
      text(vec(x, y - 0.9 * nameMm), mirrored ? 'back' : 'up', sheetSizes.smallMm, { anchor: 'middle' }),
    ]),
  ]);
}

/** An outline to cut to, drawn wide and filled with nothing. */
const wideEdge = (edge: Polygons): Layer =>
  layer(
    'fixed',
    plyOutline(edge).map((loop) => ({ kind: 'run', edges: edgesOf(loop) })),
  );

/** The plate that turns about the crank, with the pieces it carries, its slots and the marks of its turn. */
export function swingPlate(bench: Bench, gauge: SwingGauge, withBars: boolean): Scene {
  const words = templateWords(bench, `${title}: the plate`, plateSteps(bench, gauge));
  const view = viewOf('swing-plate', [
    plyEdge(gauge.plate),
    layer(
      'fixed-behind',
      gauge.pieces.map(({ outline: edge }) => outline(plyOutline(edge))),
    ),
    layer(
      'text',
      gauge.pieces.map(({ name, outline: edge }) => {
        const { x, y } = insideOf(edge);
        return text(vec(x, y - 0.3 * nameMm), name, nameMm, { anchor: 'middle', bold: true });
      }),
    ),
    ...punchCross(
      vec(0, 0),
      gauge.spigotMm / 2,
      `${axisMark(bench.joint)}, Ø${givenLength(gauge.spigotMm, bench.joint.fit.units)}`,
    ),
    ...(gauge.scale === null ? [] : turnMarks(gauge.scale, bench)),
    ...(gauge.touch === null ? [] : touchMarks(gauge.touch, gauge.scale)),
  ]);
  return templateSheet(words, [view], withBars);
}

function plateSteps(bench: Bench, { bore, spigotMm, legs, scale, pieces, touch, forgives }: SwingGauge): string[] {
  const { units } = bench.joint.fit;
  const plug =
    bore === null
      ? `a plug turned to fit the bore of ${axisName(bench.joint)} (measure it), with a Ø${givenLength(spigotMm, units)} spigot`
      : `a plug turned to fit ${holeWords(bore, units)}, with a Ø${givenLength(spigotMm, units)} spigot`;
  const turns = legs.map(({ from, to }) => {
    const turn = turnRange(from.turnRad, to.turnRad);
    return `turn ${turn} on packers ${rangeText(from.standOffMm, to.standOffMm, units)} high`;
  });
  return [
    `Glue on ${plyWords(bench)}, cut to the outside line and cut out the slots. It turns on ${plug}. Dashed: ${pieces.map(({ name }) => name).join(', ')} fixed under or over it by blocks, as their own sheet says.`,
    `It lies on the face, print towards ${bench.mirrored ? 'it' : 'you'}, and stands for the face of ${otherName(bench)}. Swing it through as the part goes in: ${turns.join('; ')}. Then home, on the face.`,
    scale === null
      ? 'No hole of known place shows through it: read the turn with a protractor.'
      : `Read the turn at ${holeWords(scale.hole, units)} through the slot: its middle against the marks.`,
    ...(touch === null ? [] : [firstTouchStep(touch, bench)]),
    'Where it touches, the cut is not done. When it swings through free, the clearance asked on the way in is there, as traced. Measure home by itself.',
    ...(forgives === null ? [] : [`${forgivenText(forgives, units)} That is once it is cut, of the part itself.`]),
    ...(bench.joint.fit.wander === null
      ? []
      : ['The gauge proves the way in as it is written; that it may be strayed from is proved on paper alone.']),
  ];
}

/** What to look for before anything is cut: where the gauge stops, and where the part itself would. */
function firstTouchStep(touch: GaugeTouch, bench: Bench): string {
  const bare = bench.touch?.touch;
  const later =
    bare === undefined
      ? ''
      : ` ${otherName(bench)} itself, with no clearance round it, first touches at ${turnText(bare.turnRad)}.`;
  return `Before the cut it should touch first where the target is, ${touch.piece} ${touchWords(touch, bench)}; the double mark beside the slot is that turn.${later} If it stops elsewhere, measure again before you cut.`;
}

/** The place of the first touch, and beside the slot the turn at which it comes. */
function touchMarks({ at, turnRad }: GaugeTouch, scale: TurnScale | null): Layer[] {
  const words = `touches first at ${turnText(turnRad)}`;
  const aside = vec(at.x, at.y - targetMm - 1.2 * sheetSizes.smallMm);
  const ticks =
    scale === null
      ? []
      : [-1, 1].map((side) => {
          const rad = turnRad + (side * doubleMarkMm) / (2 * length(scale.at(turnRad)));
          return line(besideSlot(scale, rad, 0), besideSlot(scale, rad, longMarkMm));
        });
  return [
    layer('first-touch', [...target(at, targetMm), ...ticks]),
    layer('text', [text(aside, words, sheetSizes.smallMm, { anchor: 'middle', bold: true })]),
  ];
}

/** A place of the slot's outer edge at a turn, and so much farther out. */
function besideSlot({ at, radiusMm }: TurnScale, turnRad: number, mm: number): Vec {
  const p = at(turnRad);
  return add(p, scale(p, (radiusMm + mm) / length(p)));
}

/** Between the two lines of the double mark. */
const doubleMarkMm = 1;
const markMm = 3;
const longMarkMm = 5;

/** Marks beside the slot, a degree apart, at which the middle of the hole shows. */
function turnMarks(turns: TurnScale, { joint }: Bench): Layer[] {
  const { at, fromRad, toRad } = turns;
  const from = Math.ceil(degreesOf(fromRad) - 1e-9);
  const whole = Array.from({ length: Math.floor(degreesOf(toRad) + 1e-9) - from + 1 }, (_, i) => from + i);
  const ends = [...new Set(joint.fit.legs.flatMap((leg) => [leg.from.turnRad, leg.to.turnRad]).map(degreesOf))];
  const named = [...new Set([...ends, ...whole.filter((deg) => deg % 5 === 0)])].filter((deg) =>
    ends.every((end) => end === deg || Math.abs(end - deg) > 2.5),
  );
  const outward = (deg: number, mm: number): Vec => besideSlot(turns, (deg * Math.PI) / 180, mm);
  const mark = (deg: number, mm: number) => line(outward(deg, 0), outward(deg, mm));
  const words = named.map((deg): TextMark => {
    const { x, y } = outward(deg, longMarkMm + 2.5);
    return text(vec(x, y - sheetSizes.smallMm / 3), degreesText(deg).replace('.0', ''), sheetSizes.smallMm, {
      anchor: 'middle',
    });
  });
  return [
    layer('frame', [...whole.map((deg) => mark(deg, markMm)), ...named.map((deg) => mark(deg, longMarkMm))]),
    layer('text', words),
    layer('centre-line', [{ kind: 'polyline', points: whole.map((deg) => at((deg * Math.PI) / 180)) }]),
  ];
}
