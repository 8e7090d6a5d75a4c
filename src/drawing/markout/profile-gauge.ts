import { add, lerp, scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { givenLength } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench, BenchBand } from '../../markout/marking-out-bench.ts';
import { levelsOf, locatingPlate } from '../../markout/marking-out-plate.ts';
import { type ProfilePiece, profilePieces } from '../../markout/marking-out-profile.ts';
import { plyOutline } from '../../markout/ply-outline.ts';
import { axisMark, shortName } from '../../words/names.ts';
import { cross, layer, outline, text, viewOf } from '../scene/marks.ts';
import type { Scene, View } from '../scene/scene.ts';
import { fitText } from '../scene/text-size.ts';
import { asRun, holeCross, holeWords, placeNumbers, plyEdge, punchCross, wideRuns } from './template-marks.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { bandWords, plyWords, templateWords } from './template-words.ts';

/** A longer name of the part is cut, so that no gauge is as wide as its name. */
const nameRoomMm = 80;

/** The gauge of one band, and the plate that carries it. */
export interface ProfileGauge {
  readonly band: BenchBand;
  readonly pieces: readonly NamedPiece[];
  readonly plate: Polygons | null;
}

export interface NamedPiece extends ProfilePiece {
  readonly name: string;
}

/** A profile gauge for each band that leaves an edge. */
export const profileGauges = (bench: Bench): ProfileGauge[] =>
  bench.bands.flatMap((band) => {
    const pieces = profilePieces(bench, band).map((piece, i) => ({ ...piece, name: `G${i + 1}` }));
    if (pieces.length === 0) return [];
    return [
      {
        band,
        pieces,
        plate: locatingPlate(
          bench,
          pieces.flatMap(({ pins }) => pins ?? []),
        ),
      },
    ];
  });

export const pinRadiusMm = 3;

const pinWords = (units: Units): string => `Ø${givenLength(2 * pinRadiusMm, units)}`;

/** The pieces that fit the outline to leave, to glue on ply and cut out. */
export function profileScene(bench: Bench, gauge: ProfileGauge, withBars: boolean): Scene {
  const words = templateWords(bench, `Profile gauge: ${bandWords(gauge.band, bench)}`, pieceSteps(bench, gauge));
  return templateSheet(
    words,
    gauge.pieces.map((piece) => pieceView(bench, piece)),
    withBars,
  );
}

function pieceSteps(bench: Bench, { band, pieces, plate }: ProfileGauge): string[] {
  const { units } = bench.joint.fit;
  const names = pieces.map(({ name }) => name).join(' and ');
  const pinless = pieces.filter(({ pins }) => pins === null).map(({ name }) => name);
  const missed = pieces.filter((piece) => piece.missed.length > 0).map(({ name }) => name);
  return [
    `Glue on ${plyWords(bench)}. Cut ${names} to the outside line: the wide edge is the outline to leave, so leave the line there and file to it. Elsewhere the gauge stands clear.`,
    plate === null
      ? `Hold it ${levelWords(bench, band)} by a block, and by the numbered places of the marking-out table: nothing here locates a plate.`
      : `Piece A, on the next sheets, lies on the face and locates it. ${spacerWords(bench, band)}`,
    `Slide it in along the arrow. The cut is done when it goes home${plate === null ? '' : ` and ${pinWords(units)} pins drop through A, the spacer and the gauge`}. Where it will not, the metal that stops it is what is left to go.`,
    ...(plate === null || pinless.length === 0
      ? []
      : [`There is no room for pins in ${pinless.join(' and ')}: hold it in its place on A by hand.`]),
    ...(missed.length === 0
      ? []
      : [`The dashed part of the edge cannot be reached by ${missed.join(', ')}: mark it from the table.`]),
    `Dashed: first line. Long-dash-dot: last line, never past it. Numbers are places of the marking-out table. Lengths are in ${units}.`,
  ];
}

const levelWords = ({ joint }: Bench, { depth }: BenchBand): string =>
  levelsOf(depth)
    .map(
      ({ depthMm, held }) =>
        `${givenLength(Math.abs(depthMm), joint.fit.units)} ${held === 'under' ? 'below' : 'above'} the face`,
    )
    .join(' and then ');

function spacerWords({ joint }: Bench, { depth }: BenchBand): string {
  const { units } = joint.fit;
  const [first, second] = levelsOf(depth);
  const held = first?.held === 'over' ? 'stands on A' : 'hangs under A';
  const spacer = (mm: number): string => (mm === 0 ? 'without a spacer' : `on a spacer ${givenLength(mm, units)} high`);
  const near = spacer(first?.spacerMm ?? 0);
  if (depth === null) return `The gauge ${held} ${near}; the cut reaches through every depth.`;
  if (second === undefined) return `The gauge ${held} ${near}.`;
  return `The gauge ${held} ${near} for one end of the band, ${spacer(second.spacerMm)} for the other.`;
}

const nameMm = 6;
/** From the cut to the middle of a gauge's name, mm. */
const nameOutMm = 20;

const meanOf = (points: readonly Vec[]): Vec => scale(points.reduce(add, vec(0, 0)), 1 / Math.max(1, points.length));

function pieceView({ mirrored, present }: Bench, piece: NamedPiece): View {
  const { outline: edge, gauging, missed, pins, outward, name } = piece;
  const cutAt = meanOf(gauging.flatMap(({ points }) => points));
  const middle = add(cutAt, scale(outward, nameOutMm));
  const up = mirrored ? 'this side away from you' : 'this side towards you';
  const arrow = {
    kind: 'arrow',
    from: add(cutAt, scale(outward, 12)),
    to: add(cutAt, scale(outward, 2)),
    heads: 'to',
  } as const;
  return viewOf(`piece-${name}`, [
    layer('fixed-metal', [outline(loopsOf(piece.around))]),
    layer(
      'first-line',
      piece.firstLine.map(({ points }) => asRun(points)),
    ),
    layer(
      'last-line',
      piece.lastLine.map(({ points }) => asRun(points)),
    ),
    layer(
      'fixed-behind',
      missed.map(({ points }) => asRun(points)),
    ),
    plyEdge(edge),
    wideRuns(gauging),
    ...placeNumbers(piece.places),
    ...(pins ?? []).flatMap((at) => punchCross(at, pinRadiusMm, 'pin Ø6', middle)),
    layer('witness', [arrow]),
    layer('text', [
      text(vec(middle.x, middle.y + 2), name, nameMm, { anchor: 'middle', bold: true }),
      text(vec(middle.x, middle.y - 3.4), up, sheetSizes.smallMm, { anchor: 'middle' }),
      text(
        vec(middle.x, middle.y - 6.4),
        fitText(shortName(present), sheetSizes.smallMm, nameRoomMm),
        sheetSizes.smallMm,
        { anchor: 'middle' },
      ),
    ]),
  ]);
}

/** The plate that lies on the face over the holes it is located by, with the pieces it carries in their places. */
export function plateScene(bench: Bench, { band, pieces }: ProfileGauge, plate: Polygons, withBars: boolean): Scene {
  const holes = bench.holes ?? [];
  const { units } = bench.joint.fit;
  const words = templateWords(bench, `Plate A of the profile gauge: ${bandWords(band, bench)}`, [
    `Glue on ${plyWords(bench)} and cut to the outside line. Punch every cross, then drill: the holes over ${holes.map((hole) => holeWords(hole, units)).join(' and ')} to fit, the pins ${pinWords(units)}.`,
    `It lies on the face, print towards ${bench.mirrored ? 'it' : 'you'}. ${spacerWords(bench, band)}`,
    'Dashed: the pieces of the gauge, from their own sheet.',
  ]);
  const middle = plateName(bench, pieces);
  const view = viewOf('plate-A', [
    plyEdge(plate),
    layer(
      'fixed-behind',
      pieces.map(({ outline: edge }) => outline(plyOutline(edge))),
    ),
    layer('centre-line', cross(vec(0, 0), 8)),
    ...holes.flatMap((hole) => holeCross(hole, units)),
    ...pieces.flatMap(({ pins, name }) =>
      (pins ?? []).flatMap((at) => punchCross(at, pinRadiusMm, `pin ${name}`, middle)),
    ),
    layer('text', [text(vec(0, 10), axisMark(bench.joint), sheetSizes.textMm, { anchor: 'middle' })]),
    layer('text', [text(middle, 'A', nameMm, { anchor: 'middle', bold: true })]),
  ]);
  return templateSheet(words, [view], withBars);
}

/** Between the middle of the holes and that of the pins, which is on the plate. */
function plateName({ holes }: Bench, pieces: readonly NamedPiece[]): Vec {
  return lerp(meanOf((holes ?? []).map(({ at }) => at)), meanOf(pieces.flatMap(({ pins }) => pins ?? [])), 0.5);
}
