import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { planLine } from '../../words/grind-text.ts';
import { titleOf } from '../../words/names.ts';
import { verdictLine } from '../../words/verdict.ts';
import type { Across } from '../fit/across.ts';
import { depthChart } from '../fit/depth-chart.ts';
import type { DrawInput } from '../fit/draw-input.ts';
import { heightOf, widthOf } from './frame.ts';
import { legend } from './legend.ts';
import { layer, text, viewOf } from './marks.ts';
import { figuresOf, notes } from './notes.ts';
import { scaleBar } from './scale-bar.ts';
import type { Scene, View } from './scene.ts';
import type { Sizes } from './sizes.ts';
import type { Role } from './styles.ts';
import { fitText, wrapText } from './text-size.ts';

interface SheetContent {
  readonly input: DrawInput;
  readonly across: Across;
  readonly sizes: Sizes;
  /** The most that running words may take across; null where they may go over the whole sheet. */
  readonly wordsMm: number | null;
  readonly face: View;
  readonly side: View;
  readonly details: readonly View[];
}

/** What is read off paper in the hand, and not off a sheet seen whole, is no larger than this, mm. */
const printedTextMm = 4;

function printed(sizes: Sizes): Sizes {
  const by = Math.min(1, printedTextMm / sizes.textMm);
  const { textMm, headingMm, verdictMm } = sizes;
  return { ...sizes, textMm: by * textMm, headingMm: by * headingMm, verdictMm: by * verdictMm };
}

const marginEms = 2;
const gapEms = 3;
/** From the top of a caption to the view under it, in heading sizes. */
const captionEms = 2.9;
/** Least width of a column of words, in font sizes. */
const wordsEms = 36;

/**
 * The sheet: the verdict above; the face view with the notes under it, the side view level with it and the depths under
 * that, and the details with the legend under them.
 */
export function laidOut({ input, across, sizes, wordsMm, face, side, details }: SheetContent): Scene {
  const { textMm, headingMm } = sizes;
  const gap = gapEms * textMm;
  const grid = detailGrid(details, gap / 2);
  const key = legend(input.joint, rolesOf([face, side, ...details]), Math.max(grid.width, wordsEms * textMm), sizes);
  const widths = [
    Math.max(widthOf(face.frame), wordsEms * textMm),
    Math.max(widthOf(side.frame), 0.92 * wordsEms * textMm),
    Math.max(grid.width, widthOf(key.frame)),
  ] as const;
  const sideLeft = widths[0] + gap;
  const detailLeft = sideLeft + widths[1] + gap;

  // heights run down from the head; the sheet is laid round everything at the end
  const within = (mm: number): number => Math.min(mm, wordsMm ?? mm);
  const lettering = wordsMm === null ? sizes : printed(sizes);
  const head = heading(input, within(detailLeft + widths[2]), lettering);
  const top = -heightOf(head.frame) - gap;
  const axisY = top - captionEms * headingMm - Math.max(face.frame.maxY, side.frame.maxY);
  const bar = scaleBar(widths[0], input.joint.fit.units, sizes);
  const barTop = axisY + face.frame.minY - gap / 2;
  const sideX = sideLeft - side.frame.minX;
  const chart = depthChart(input, across, { ...side.frame, maxX: side.frame.minX + widths[1] }, sizes);
  const faceCaption = {
    id: 'face-caption',
    title: 'Face view',
    words: `looking at the mating face of ${input.joint.fixed.name}`,
    widthMm: widths[0],
  };
  const sideCaption = {
    id: 'side-caption',
    title: 'Side view',
    words: `level with the face view, seen from its ${across.from}`,
    widthMm: widths[1],
  };
  const views = [
    under(head, 0, 0),
    caption(faceCaption, 0, top, sizes),
    { ...face, at: vec(-face.frame.minX, axisY) },
    under(bar, 0, barTop),
    under(notes(input, within(widths[0]), lettering), 0, barTop - heightOf(bar.frame) - gap / 2),
    caption(sideCaption, sideLeft, top, sizes),
    { ...side, at: vec(sideX, axisY) },
    { ...chart, at: vec(sideX, axisY + side.frame.minY - gap - chart.frame.maxY) },
    ...grid.place(vec(detailLeft, top)),
    under(key, detailLeft, top - grid.height - (details.length === 0 ? 0 : gap)),
  ];
  return onPaper(views, input, sizes);
}

/** A view with its upper left corner at a place. */
const under = (view: View, left: number, top: number): View => ({
  ...view,
  at: vec(left - view.frame.minX * view.scale, top - view.frame.maxY * view.scale),
});

function detailGrid(details: readonly View[], gap: number) {
  const columns = details.length > 2 ? 2 : 1;
  const width = Math.max(0, ...details.map((view) => widthOf(view.frame) * view.scale));
  const heights = Array.from({ length: Math.ceil(details.length / columns) }, (_, row) =>
    Math.max(...details.slice(row * columns, (row + 1) * columns).map((view) => heightOf(view.frame) * view.scale)),
  );
  const topOf = (row: number): number => heights.slice(0, row).reduce((sum, height) => sum + height + gap, 0);
  return {
    width: details.length === 0 ? 0 : columns * width + (columns - 1) * gap,
    height: details.length === 0 ? 0 : topOf(heights.length) - gap,
    place: ({ x, y }: Vec): View[] =>
      details.map((view, i) => under(view, x + (i % columns) * (width + gap), y - topOf(Math.floor(i / columns)))),
  };
}

const rolesOf = (views: readonly View[]): Set<Role> =>
  new Set(views.flatMap(({ layers }) => layers.map(({ role }) => role)));

function heading(input: DrawInput, widthMm: number, { verdictMm, headingMm }: Sizes): View {
  const { joint, check } = input;
  const verdict = wrapText(verdictLine(check), verdictMm, widthMm, true);
  const rows = [...figuresOf(input), ...(input.plan === null ? [] : [planLine(joint, input.plan)])].flatMap((figure) =>
    wrapText(figure, headingMm, widthMm),
  );
  const layers = [
    layer('text', [
      text(vec(0, 0), fitText(titleOf(joint), headingMm, widthMm), headingMm),
      ...verdict.map((row, i) => text(vec(0, -(1.5 + 1.2 * i) * verdictMm), row, verdictMm, { bold: true })),
      ...rows.map((row, i) =>
        text(vec(0, -(0.6 + 1.2 * verdict.length) * verdictMm - (1.5 + 1.25 * i) * headingMm), row, headingMm),
      ),
    ]),
  ];
  return viewOf('heading', layers);
}

interface Caption {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly widthMm: number;
}

const caption = (
  { id, title, words, widthMm }: Caption,
  left: number,
  top: number,
  { headingMm, textMm }: Sizes,
): View =>
  under(
    viewOf(id, [
      layer('text', [
        text(vec(0, 0), title, headingMm, { bold: true }),
        text(vec(0, -1.3 * textMm), fitText(words, textMm, widthMm), textMm),
      ]),
    ]),
    left,
    top,
  );

/** Paper round the placed views, its lower left corner at 0, 0. */
function onPaper(views: readonly View[], { joint, check }: DrawInput, { textMm, penMm }: Sizes): Scene {
  const margin = marginEms * textMm;
  const edges = views.map(({ at, scale, frame }) => ({
    minX: at.x + scale * frame.minX,
    minY: at.y + scale * frame.minY,
    maxX: at.x + scale * frame.maxX,
    maxY: at.y + scale * frame.maxY,
  }));
  const left = Math.min(...edges.map(({ minX }) => minX)) - margin;
  const foot = Math.min(...edges.map(({ minY }) => minY)) - margin;
  return {
    title: titleOf(joint),
    description: `${verdictLine(check)} True scale in ${joint.fit.units === 'mm' ? 'mm' : 'inches'}, viewed from in front of the mating face of ${joint.fixed.name}. Proved for the outlines as traced; geometry only.`,
    widthMm: Math.ceil(Math.max(...edges.map(({ maxX }) => maxX)) + margin - left),
    heightMm: Math.ceil(Math.max(...edges.map(({ maxY }) => maxY)) + margin - foot),
    penMm,
    views: views.map((view) => ({ ...view, at: vec(view.at.x - left, view.at.y - foot) })),
  };
}
