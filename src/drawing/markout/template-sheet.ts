import { vec } from '../../geometry/plane/vec.ts';
import { barMm } from '../scene/check-bars.ts';
import { heightOf, widthOf } from '../scene/frame.ts';
import { layer, line, text, viewOf } from '../scene/marks.ts';
import type { Mark, Scene, View } from '../scene/scene.ts';
import { wrapText } from '../scene/text-size.ts';
import type { TemplateWords } from './template-words.ts';

/** Sizes of lettering and lines on templates, mm: ISO 128's 0.35 for what is cut to, half of it for the rest. */
export const sheetSizes = {
  titleMm: 4.6,
  warningMm: 3.4,
  textMm: 2.6,
  smallMm: 2.1,
  penMm: 0.35,
  hatchMm: 1.6,
} as const;

/** What a line of words takes up, in its own size. */
const lineHeight = 1.22;
/** Words are set in a column as wide as this, mm, so that all of them fall on the first sheet of A4 or Letter. */
export const wordsMm = 176;
export const gapMm = 5;
const edgeMm = 2;

/** A template: its words above, its views from left to right under them, and check bars unless its paper carries them. */
export function templateSheet(words: TemplateWords, drawn: readonly View[], withBars: boolean): Scene {
  const widthMm = Math.max(wordsMm, ...drawn.map(wideMm));
  const rows = [[headView(words, wordsMm)], ...inRows(drawn, widthMm)];
  const left = edgeMm + (withBars ? barRoomMm : 0);
  const heights = rows.map((row) => Math.max(...row.map(highMm)));
  const drawnMm = heights.reduce((sum, height) => sum + height, gapMm * (rows.length - 1));
  const heightMm = Math.max(drawnMm, withBars ? barMm + barRoomMm : 0) + edgeMm + left;
  let top = heightMm - edgeMm;
  const placed = rows.flatMap((row, i) => {
    let x = left;
    const views = row.map((view) => {
      const at = vec(x - view.scale * view.frame.minX, top - view.scale * view.frame.maxY);
      x += wideMm(view) + gapMm;
      return { ...view, at };
    });
    top -= (heights[i] as number) + gapMm;
    return views;
  });
  return {
    title: words.title,
    description: [...words.warnings, ...words.about].join(' '),
    widthMm: Math.ceil(widthMm + left + edgeMm),
    heightMm: Math.ceil(heightMm),
    penMm: sheetSizes.penMm,
    views: [...placed, ...(withBars ? [barsView()] : [])],
  };
}

/** What a view takes up on paper. */
const wideMm = ({ frame, scale }: View): number => scale * widthOf(frame);
export const highMm = ({ frame, scale }: View): number => scale * heightOf(frame);

/** The least that the papers leave of a sheet between their margins: Letter upright, mm. */
const sheetMm = 259;

/** How much of one sheet is left under its words, mm. */
export const roomUnderMm = (words: TemplateWords): number =>
  sheetMm - 2 * edgeMm - gapMm - highMm(headView(words, wordsMm));

/** Things from above down parted into sheets with so much room, as many to a sheet as fit, one at least. */
export function inSheets<T>(things: readonly T[], highMm: (thing: T) => number, roomMm: number): T[][] {
  const sheets: T[][] = [];
  let leftMm = 0;
  for (const thing of things) {
    if (sheets.length === 0 || leftMm < highMm(thing)) {
      sheets.push([]);
      leftMm = roomMm;
    }
    sheets.at(-1)?.push(thing);
    leftMm -= highMm(thing);
  }
  return sheets;
}

/** Views from left to right, in as many rows as the width asks for. */
function inRows(views: readonly View[], widthMm: number): View[][] {
  const rows: View[][] = [];
  let usedMm = 0;
  for (const view of views) {
    const mm = wideMm(view);
    const row = rows.at(-1);
    if (row === undefined || usedMm + gapMm + mm > widthMm) {
      rows.push([view]);
      usedMm = mm;
    } else {
      row.push(view);
      usedMm += gapMm + mm;
    }
  }
  return rows;
}

interface Row {
  readonly words: string;
  readonly sizeMm: number;
  readonly bold: boolean;
  /** Room above it, in its own size. */
  readonly above: number;
}

function headView(words: TemplateWords, widthMm: number): View {
  const { titleMm, warningMm, textMm, smallMm } = sheetSizes;
  const paragraph = (words: string, sizeMm: number, bold = false): Row[] =>
    wrapText(words, sizeMm, widthMm, bold).map((row, i) => ({ words: row, sizeMm, bold, above: i === 0 ? 0.35 : 0 }));
  const rows = [
    ...paragraph(words.title, titleMm, true),
    ...words.warnings.flatMap((warning) => paragraph(warning, warningMm, true)),
    ...words.about.flatMap((about) => paragraph(about, textMm)),
    ...words.steps.flatMap((step, i) => paragraph(`${i + 1}. ${step}`, textMm)),
    ...words.cautions.flatMap((caution) => paragraph(caution, smallMm)),
  ];
  let y = 0;
  const marks = rows.map((row, i) => {
    if (i > 0) y -= (lineHeight + row.above) * row.sizeMm;
    return text(vec(0, y), row.words, row.sizeMm, { bold: row.bold });
  });
  return viewOf('words', [layer('text', marks)]);
}

const barRoomMm = 12;

/** Two bars square to one another, to lay a rule on; the drawing is true when both read 150 mm. */
function barsView(): View {
  const inMm = edgeMm + barRoomMm / 2;
  const from = edgeMm + barRoomMm;
  const tick = (at: number, reach: number): Mark[] => [
    line(vec(from + at, inMm - reach), vec(from + at, inMm + reach)),
    line(vec(inMm - reach, from + at), vec(inMm + reach, from + at)),
  ];
  const ticks = Array.from({ length: 16 }, (_, i) => tick(10 * i, i % 15 === 0 ? 2 : i % 5 === 0 ? 1.2 : 0.7)).flat();
  const { smallMm } = sheetSizes;
  return viewOf('check-bars', [
    layer('frame', [
      line(vec(from, inMm), vec(from + barMm, inMm)),
      line(vec(inMm, from), vec(inMm, from + barMm)),
      ...ticks,
    ]),
    layer('text', [
      text(vec(from + barMm + 2.5, inMm - 0.7), `${barMm} mm at 100 %`, smallMm),
      text(vec(edgeMm, from + barMm + 3), `${barMm} mm`, smallMm),
    ]),
  ]);
}
