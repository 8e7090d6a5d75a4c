import type { WayInResult } from '../../clearance/check-result.ts';
import type { TravelCurve, TravelPiece } from '../../clearance/travel-curve.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { polygonLoop } from '../../geometry/plane/loop.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { joinedSpans } from '../../geometry/spans.ts';
import { bareGivenLength, givenLength, mmIn } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Leg, Position } from '../../job/path.ts';
import { curveNames, cutOffAt, firstTouchLabel, travelWords } from '../../words/travel-text.ts';
import { turnText } from '../../words/units.ts';
import { box, layer, line, outline, text, viewOf } from '../scene/marks.ts';
import { niceStep } from '../scene/nice-step.ts';
import type { Layer, Mark, Scene, TextMark } from '../scene/scene.ts';
import { textWidthMm } from '../scene/text-size.ts';
import { target } from './closest-place.ts';
import { hatch, hatchRad } from './plane-layers.ts';

/** What the chart shows: the curve, what the check found, and the way in it runs along. */
export interface TravelChartInput {
  readonly curve: TravelCurve;
  /** The same once cut as planned; null where nothing is cut. */
  readonly after: TravelCurve | null;
  readonly wayIn: WayInResult;
  readonly legs: readonly Leg[];
  readonly units: Units;
}

const plot: Box = { minX: 0, maxX: 148, minY: 0, maxY: 56 };
const textMm = 3.2;
const penMm = 0.4;
const marginMm = 2;
const leastTopMm = 2;

/** How clearance and the way in come onto the plot; clearances above the top are cut off there. */
interface Axes {
  /** Where a place of a leg, counting from 1, stands. */
  readonly x: (leg: number, at: number) => number;
  readonly y: (mm: number) => number;
  readonly leastMm: number;
  readonly mostMm: number;
  readonly stepMm: number;
}

/**
 * The least clearance along the way in: across, the legs one after another; upwards the clearance. Steps are the curve's
 * own, the band under it is the tracing error at its worst, what fouls is filled and hatched, dotted what a cut makes of it.
 */
export function travelChart(input: TravelChartInput): Scene {
  const axes = axesOf(input);
  const layers = [
    layer('leader', grid(input, axes)),
    layer('foul-stretch', foulMarks(input, axes)),
    layer('error-band', bandMarks(input, axes)),
    layer('clearance-curve', curveMarks(input.curve, axes)),
    layer('clearance-after', input.after === null ? [] : curveMarks(input.after, axes)),
    layer('asked', [line(vec(plot.minX, axes.y(input.curve.askedMm)), vec(plot.maxX, axes.y(input.curve.askedMm)))]),
    layer('frame', [line(vec(plot.minX, axes.y(0)), vec(plot.maxX, axes.y(0))), box(plot)]),
    layer('text', [...scaleLabels(input, axes), ...legLabels(input, axes), ...plotWords(input, axes)]),
    ...(input.after === null ? [] : keyLayers(input, axes)),
    ...touchLayers(input, axes),
  ];
  const view = viewOf('travel', layers);
  const { minX, minY, maxX, maxY } = view.frame;
  const words = travelWords(input.curve, input.wayIn, input.units);
  return {
    ...words,
    widthMm: Math.ceil(maxX - minX + 2 * marginMm),
    heightMm: Math.ceil(maxY - minY + 2 * marginMm),
    penMm,
    views: [{ ...view, at: vec(marginMm - minX, marginMm - minY) }],
  };
}

/** What happens near is what matters: the plot reaches somewhat above what was asked and what is nearest. */
function axesOf({ curve: { pieces, askedMm }, units }: TravelChartInput): Axes {
  const near = pieces.filter(hasFigures);
  const leastOfAll = near.reduce((least, { clearanceMm }) => Math.min(least, clearanceMm), Infinity);
  const topMm = Math.max(leastTopMm, 2.5 * askedMm, near.length === 0 ? 0 : 1.4 * leastOfAll);
  const bottomMm = near.reduce((least, { worstClearanceMm }) => Math.min(least, worstClearanceMm), 0);
  const stepMm = niceStep((topMm - bottomMm) / 5 / mmIn(units)) * mmIn(units);
  const [leastMm, mostMm] = [Math.floor(bottomMm / stepMm) * stepMm, Math.ceil(topMm / stepMm) * stepMm];
  const perMm = (plot.maxY - plot.minY) / (mostMm - leastMm);
  const starts = legStarts(pieces);
  const all = Math.max(1, pieces.length);
  return {
    x: (leg, at) => {
      const [from, to] = [starts[leg - 1] ?? 0, starts[leg] ?? all];
      return plot.minX + ((from + at * (to - from)) / all) * (plot.maxX - plot.minX);
    },
    y: (mm) => plot.minY + (Math.min(mm, mostMm) - leastMm) * perMm,
    leastMm,
    mostMm,
    stepMm,
  };
}

/** How many pieces come before each leg, and before the end. */
function legStarts(pieces: readonly TravelPiece[]): number[] {
  const starts: number[] = [];
  for (const [i, { leg }] of pieces.entries()) while (starts.length < leg) starts.push(i);
  return [...starts, pieces.length];
}

const ticks = ({ leastMm, mostMm, stepMm }: Axes): number[] =>
  Array.from({ length: Math.round((mostMm - leastMm) / stepMm) + 1 }, (_, i) => leastMm + i * stepMm);

const grid = ({ legs }: TravelChartInput, axes: Axes): Mark[] => [
  ...ticks(axes).map((mm) => line(vec(plot.minX - 1, axes.y(mm)), vec(plot.maxX, axes.y(mm)))),
  ...legs.slice(1).map((_, i) => line(vec(axes.x(i + 2, 0), plot.minY), vec(axes.x(i + 2, 0), plot.maxY))),
];

/** The parts of the way on which it fouls, as the check found them. */
const foulSpans = ({ wayIn }: TravelChartInput, { x }: Axes): [number, number][] =>
  joinedSpans(wayIn.fouling.map(({ from, to }) => [x(from.leg, from.at), x(to.leg, to.at)] as const));

function foulMarks(input: TravelChartInput, axes: Axes): Mark[] {
  const boxes = foulSpans(input, axes).map(([minX, maxX]) => box({ ...plot, minX, maxX }));
  return boxes.flatMap((stretch) => [stretch, hatch(stretch.loops, hatchRad, 2)]);
}

type FiguredPiece = TravelPiece & { readonly clearanceMm: number; readonly worstClearanceMm: number };

const hasFigures = (piece: TravelPiece): piece is FiguredPiece =>
  piece.clearanceMm !== null && piece.worstClearanceMm !== null;

/** The pieces in which something is near, those that follow one another together. */
function runsOf(pieces: readonly TravelPiece[]): FiguredPiece[][] {
  const runs: FiguredPiece[][] = [];
  let before: TravelPiece | undefined;
  for (const piece of pieces) {
    if (hasFigures(piece)) {
      if (before !== undefined && hasFigures(before)) runs.at(-1)?.push(piece);
      else runs.push([piece]);
    }
    before = piece;
  }
  return runs;
}

const steps = (run: readonly FiguredPiece[], { x, y }: Axes, mm: (piece: FiguredPiece) => number): Vec[] =>
  run.flatMap((piece) => [vec(x(piece.leg, piece.fromAt), y(mm(piece))), vec(x(piece.leg, piece.toAt), y(mm(piece)))]);

const curveMarks = ({ pieces }: TravelCurve, axes: Axes): Mark[] =>
  runsOf(pieces).map((run) => line(...steps(run, axes, ({ clearanceMm }) => clearanceMm)));

const bandMarks = ({ curve }: TravelChartInput, axes: Axes): Mark[] =>
  runsOf(curve.pieces).map((run) =>
    outline([
      polygonLoop([
        ...steps(run, axes, ({ clearanceMm }) => clearanceMm),
        ...steps(run, axes, ({ worstClearanceMm }) => worstClearanceMm).reverse(),
      ]),
    ]),
  );

function scaleLabels({ units, curve }: TravelChartInput, axes: Axes): TextMark[] {
  const labels = ticks(axes).map((mm) =>
    text(vec(plot.minX - 1.8, axes.y(mm) - 0.35 * textMm), bareGivenLength(mm, units).replace('-', '−'), textMm, {
      anchor: 'end',
    }),
  );
  const asked = vec(plot.maxX + 1.5, axes.y(curve.askedMm) - 0.35 * textMm);
  return [
    ...labels,
    text(vec(plot.minX - 8, plot.maxY + textMm), `clearance, ${units}`, textMm, { bold: true }),
    text(asked, `asked ${givenLength(curve.askedMm, units)}`, textMm),
  ];
}

/** Each leg by its number, and under its ends where the moving part stands there. */
function legLabels({ legs, units }: TravelChartInput, axes: Axes): TextMark[] {
  const names = legs.map((_, i) => {
    const [from, to] = [axes.x(i + 1, 0), axes.x(i + 1, 1)];
    const name = `leg ${i + 1}`;
    const words = textWidthMm(name, textMm) < to - from ? name : String(i + 1);
    return text(vec((from + to) / 2, plot.minY - 1.4 * textMm), words, textMm, { anchor: 'middle' });
  });
  const positions = legs.flatMap(({ from, to }, i) => (i === 0 ? [from, to] : [to]));
  const words = positions.map((position) => positionWords(position, units));
  const levelEms = 1.25 * Math.max(...words.map((rows) => rows.length)) + 0.5;
  const rightEdges: number[] = [];
  const ends = words.flatMap((rows, i) => {
    const width = Math.max(...rows.map((words) => textWidthMm(words, textMm)));
    const x = i === 0 ? axes.x(1, 0) + width / 2 - 3 * textMm : axes.x(i, 1);
    // where the last ones stand too near, a level lower
    const free = rightEdges.findIndex((edge) => edge < x - width / 2);
    const level = free < 0 ? rightEdges.length : free;
    rightEdges[level] = x + width / 2 + 0.5 * textMm;
    const top = plot.minY - (2.9 + levelEms * level) * textMm;
    return rows.map((words, row) => text(vec(x, top - 1.25 * row * textMm), words, textMm, { anchor: 'middle' }));
  });
  return [...names, ...ends];
}

function positionWords({ standOffMm, turnRad, shift }: Position, units: Units): string[] {
  const shifted = shift.x !== 0 || shift.y !== 0;
  if (standOffMm === 0 && turnRad === 0 && !shifted) return ['home'];
  return [
    `stand-off ${givenLength(standOffMm, units)}`,
    `turn ${turnText(turnRad)}`,
    ...(shifted ? [`shift ${bareGivenLength(shift.x, units)}, ${givenLength(shift.y, units)}`] : []),
  ];
}

/** Why there is no curve where there is none, and where it leaves the plot. */
function plotWords(input: TravelChartInput, axes: Axes): TextMark[] {
  const { pieces } = input.curve;
  const words = foulSpans(input, axes)
    .filter(([from, to]) => to - from > textWidthMm('fouls', textMm, true))
    .map(([from, to]) =>
      text(vec((from + to) / 2, axes.y(0) + 2 * textMm), 'fouls', textMm, { anchor: 'middle', bold: true }),
    );
  const empty = widestGap(pieces, axes);
  const label = 'no depth shared: nothing to meet';
  if (empty !== null && empty[1] - empty[0] > textWidthMm(label, textMm))
    words.push(text(vec((empty[0] + empty[1]) / 2, axes.y(0) + textMm), label, textMm, { anchor: 'middle' }));
  if (pieces.some(({ clearanceMm }) => (clearanceMm ?? 0) > axes.mostMm))
    words.push(text(vec(plot.maxX + 1.5, plot.maxY - textMm), cutOffAt(axes.mostMm, input.units), textMm));
  return words;
}

function widestGap(pieces: readonly TravelPiece[], { x }: Axes): readonly [number, number] | null {
  const spans = pieces
    .filter((piece) => !hasFigures(piece))
    .map(({ leg, fromAt, toAt }) => [x(leg, fromAt), x(leg, toAt) + 1e-6] as const);
  return joinedSpans(spans).reduce<readonly [number, number] | null>(
    (widest, span) => (widest !== null && widest[1] - widest[0] >= span[1] - span[0] ? widest : span),
    null,
  );
}

/** A sample of each line with its name beside the plot, in the half that has no words of what was asked. */
function keyLayers({ curve: { askedMm } }: TravelChartInput, { y }: Axes): Layer[] {
  const isAskedLow = y(askedMm) < (plot.minY + plot.maxY) / 2;
  const top = isAskedLow ? plot.maxY - 3 * textMm : plot.minY + 2.2 * textMm;
  const [from, to] = [plot.maxX + 1.5, plot.maxX + 8.5];
  const sample = (row: number): Mark => line(vec(from, top - 1.4 * row * textMm), vec(to, top - 1.4 * row * textMm));
  const name = (row: number, words: string): TextMark =>
    text(vec(to + 1, top - (1.4 * row + 0.35) * textMm), words, textMm);
  return [
    layer('clearance-curve', [sample(0)]),
    layer('clearance-after', [sample(1)]),
    layer('text', [name(0, curveNames.before), name(1, curveNames.after)]),
  ];
}

/** The first touch as a target on the line of no clearance, its figures above the plot. */
function touchLayers({ wayIn: { firstTouch }, units }: TravelChartInput, axes: Axes): Layer[] {
  if (firstTouch === null) return [];
  const at = vec(axes.x(firstTouch.leg, firstTouch.at), axes.y(0));
  const words = firstTouchLabel(firstTouch, units);
  const toRight = at.x + textWidthMm(words, textMm, true) < plot.maxX + 20;
  const label = vec(at.x + (toRight ? 0 : textMm), plot.maxY + 2.6 * textMm);
  return [
    layer('leader', [line(vec(at.x, plot.maxY + 2.3 * textMm), vec(at.x, at.y))]),
    layer('first-touch', target(at, 3.2)),
    layer('text', [text(label, words, textMm, { anchor: toRight ? 'start' : 'end', bold: true })]),
  ];
}
