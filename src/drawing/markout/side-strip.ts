import { vec } from '../../geometry/plane/vec.ts';
import type { DepthRange } from '../../job/casting.ts';
import { givenLength, lengthText, mmIn } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { type SideStrip, type Station, sideStrips } from '../../markout/marking-out-strip.ts';
import { shortName } from '../../words/names.ts';
import { hatch, hatchRad } from '../fit/plane-layers.ts';
import { box, layer, line, text, viewOf } from '../scene/marks.ts';
import type { Layer, Scene, View } from '../scene/scene.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { bandWords, templateWords } from './template-words.ts';

/** The strips of every band, in the order of the table. */
export const stripsOf = (bench: Bench): readonly SideStrip[] => bench.bands.flatMap(sideStrips);

/** Strips of paper to wrap along the side, edge on the face, with the bands and what comes off. */
export function stripScene(bench: Bench, strips: readonly SideStrip[], withBars: boolean): Scene {
  const { units } = bench.joint.fit;
  const viewed = `Viewed from outside, standing before the side with the mating face of ${shortName(bench.present)} up. Hand: ${bench.mirrored ? 'mirrored' : 'as the casting, not mirrored'}.`;
  const steps = [
    'Cut out along the narrow line. Wrap it on the side with the thick edge on the mating face; it reads the right way up with the face above. Set its 0 by the place named on it.',
    'Where something nearer the face stands in the way, cut the paper along the grey line: that edge then lies where the section begins.',
    `Hatched: what comes off, with the take-off square to the side in ${units}: planned, and under it first and last line. Wide lines end the planned cut, dashed the first line, long-dash-dot the last: never past it. T: right through to another side.`,
    'Prick through the corners of the hatched field, and fold at the dashed lines marked so.',
  ];
  const words = templateWords(bench, 'Side strips', steps, viewed);
  return templateSheet(
    words,
    strips.map((strip, i) => stripView(bench, strip, i + 1)),
    withBars,
  );
}

/** How high a band without depth is drawn, mm. */
const everyDepth: DepthRange = { fromMm: 0, toMm: 40 };
/** Room under a band for its figures and the rule, mm. */
const figuresMm = 13;
/** Room over a band that stands proud, mm. */
const aboveMm = 4;

interface Paper {
  readonly strip: SideStrip;
  readonly units: Units;
  readonly topMm: number;
  readonly footMm: number;
  /** Heights of the band's near and far end; y is up from the mating face. */
  readonly bandTopMm: number;
  readonly bandFootMm: number;
}

function stripView(bench: Bench, strip: SideStrip, count: number): View {
  const depth = strip.band.depth ?? everyDepth;
  const [bandTopMm, bandFootMm] = [0 - depth.fromMm, 0 - depth.toMm];
  const paper: Paper = {
    strip,
    units: bench.joint.fit.units,
    topMm: depth.fromMm < 0 ? bandTopMm + aboveMm : 0,
    footMm: Math.min(0, bandFootMm - figuresMm),
    bandTopMm,
    bandFootMm,
  };
  return viewOf(`strip-${count}`, [
    ...paperLayers(paper),
    ...bandLayers(paper),
    ...rule(paper),
    ...strip.stations.flatMap((station) => stationLayers(station, paper)),
    ...placeLayers(paper),
    layer('text', captionOf(bench, paper, count)),
  ]);
}

const upright = (alongMm: number, { topMm, footMm }: Paper) => line(vec(alongMm, footMm), vec(alongMm, topMm));

function paperLayers(paper: Paper): Layer[] {
  const { strip, topMm, footMm } = paper;
  const { fromMm, toMm, band, corners } = strip;
  const begins = nearFace(band.section.depth);
  const { textMm, smallMm } = sheetSizes;
  const faceAbove = topMm === 0;
  return [
    layer('frame', [box({ minX: fromMm, maxX: toMm, minY: footMm, maxY: topMm })]),
    layer('mating-face', [line(vec(fromMm, 0), vec(toMm, 0))]),
    layer('text', [text(vec(fromMm, faceAbove ? 1.2 : -1.2 - textMm), 'this edge on the mating face', textMm)]),
    ...(begins === 0 ? [] : [layer('leader', [line(vec(fromMm, begins), vec(toMm, begins))])]),
    layer(
      'fixed-behind',
      corners.map((mm) => upright(mm, paper)),
    ),
    layer(
      'text',
      corners.map((mm) => text(vec(mm + 0.5, footMm + 4.4), 'fold', smallMm)),
    ),
  ];
}

/** The height at which a section begins, on the side of it that is nearer the face; 0 where it reaches the face. */
function nearFace(depth: DepthRange | null): number {
  if (depth === null) return 0;
  return depth.fromMm > 0 ? 0 - depth.fromMm : depth.toMm < 0 ? 0 - depth.toMm : 0;
}

const beginsWords = (section: string, height: number, units: Units): string =>
  `Grey line: "${section}" begins, ${givenLength(Math.abs(height), units)} ${height > 0 ? 'proud' : 'from face'}.`;

/** What comes off, and where each of the three lines begins and ends on the side. */
function bandLayers(paper: Paper): Layer[] {
  const { strip, topMm, bandTopMm, bandFootMm } = paper;
  const field = box({ minX: 0, maxX: strip.cutMm, minY: bandFootMm, maxY: bandTopMm });
  const ends = (all: readonly number[]) =>
    all.map((mm) => line(vec(mm, bandFootMm - 1.5), vec(mm, Math.min(topMm, bandTopMm + 1.5))));
  return [
    layer('relief-hatch', [hatch(field.loops, hatchRad, sheetSizes.hatchMm), field]),
    layer('first-line', ends(strip.firstEnds)),
    layer('last-line', ends(strip.lastEnds)),
    layer('fixed', ends([0, strip.cutMm])),
  ];
}

/** From mark to mark of the rule on a strip, in its units. */
const ruleStep = { mm: 10, in: 0.5 } as const;

/** Lengths along the side, a mark every 10 mm or half inch from where the cut begins. */
function rule({ strip, footMm, units }: Paper): Layer[] {
  const stepMm = ruleStep[units] * mmIn(units);
  const marks = Array.from({ length: Math.floor(strip.toMm / stepMm) + 1 }, (_, i) => i);
  return [
    layer(
      'frame',
      marks.map((i) => line(vec(i * stepMm, footMm), vec(i * stepMm, footMm + 1.5))),
    ),
    layer(
      'text',
      marks.map((i) => text(vec(i * stepMm + 0.4, footMm + 1.9), String(i * ruleStep[units]), sheetSizes.smallMm)),
    ),
  ];
}

function stationLayers({ alongMm, firstMm, plannedMm, lastMm, through }: Station, paper: Paper): Layer[] {
  const { bandFootMm, units } = paper;
  const { textMm, smallMm } = sheetSizes;
  const short = (mm: number): string => lengthText(mm, units).replace(` ${units}`, '');
  const words = through ? ['T', ''] : [short(plannedMm), `${short(firstMm)}/${short(lastMm)}`];
  return [
    layer('leader', [line(vec(alongMm, bandFootMm), vec(alongMm, bandFootMm - 1.2))]),
    layer('text', [
      text(vec(alongMm, bandFootMm - 3.6), words[0] ?? '', textMm, {
        anchor: 'middle',
        bold: true,
      }),
      text(vec(alongMm, bandFootMm - 6), words[1] ?? '', 0.85 * smallMm, { anchor: 'middle' }),
    ]),
  ];
}

/** Numbers of the table beside the field, outside the lines that end there. */
function placeLayers({ strip, bandTopMm }: Paper): Layer[] {
  const { smallMm } = sheetSizes;
  const marks = strip.places.map(({ place, alongMm }) => {
    const out = alongMm <= strip.cutMm / 2 ? -1 : 1;
    const lines = strip.lastEnds.filter((mm) => Math.abs(mm - alongMm) < smallMm);
    const beyond = Math.max(...[alongMm, ...lines].map((mm) => out * mm)) * out;
    const words = `no. ${place.row.place}`;
    return text(vec(beyond + 1.2 * out, bandTopMm - smallMm), words, smallMm, { anchor: out < 0 ? 'end' : 'start' });
  });
  return [layer('text', marks)];
}

function captionOf(bench: Bench, { strip, units, footMm, topMm }: Paper, count: number) {
  const { textMm, smallMm } = sheetSizes;
  const start = strip.places.find(({ alongMm }) => Math.abs(alongMm) < 0.5)?.place.row;
  const dividers = start?.dividers
    ?.map(({ from, mm, setMm }) => `${lengthText(setMm ?? mm, units)} from ${from}${setMm === null ? ' in plan' : ''}`)
    .join(' and ');
  const where = start === undefined ? '' : `0 is no. ${start.place}${dividers === undefined ? '' : `: ${dividers}`}.`;
  const faceBelow = topMm === 0 ? 0 : textMm + 2;
  const y = footMm - 1.2 - textMm - faceBelow;
  const begins = nearFace(strip.band.section.depth);
  const grey = begins === 0 ? '' : beginsWords(strip.band.section.id, begins, units);
  const rows = [where, grey].filter((words) => words !== '');
  return [
    text(vec(strip.fromMm, y), `S${count} ${bandWords(strip.band, bench)}`, textMm, { bold: true }),
    ...rows.map((words, i) => text(vec(strip.fromMm, y - 1.4 * (textMm + i * smallMm)), words, smallMm)),
  ];
}
