import { vec } from '../../geometry/plane/vec.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { type PrintOptions, pdfOf, sheetCount } from '../pdf/pdf.ts';
import { layer, line, text, viewOf } from '../scene/marks.ts';
import type { Layer, Scene } from '../scene/scene.ts';
import { wrapText } from '../scene/text-size.ts';
import type { MarkoutSheet } from './markout-sheets.ts';
import { type MarkoutFile, mostSheets, paperFor } from './sheet-files.ts';
import { inSheets, roomUnderMm, sheetSizes, templateSheet, wordsMm } from './template-sheet.ts';
import { templateWords } from './template-words.ts';

/** One sheet in the contents: its words, line by line, and what it takes of the page. */
interface Entry {
  readonly name: string;
  readonly purpose: readonly string[];
  readonly pages: number;
  readonly heightMm: number;
}

const lineMm = 3.6;
const pageWordsMm = 26;

/**
 * Everything that is printed, in one PDF: a page of contents first, and sheets numbered through. Null where there is but
 * one thing to print, or where it would be more sheets than anybody joins.
 */
export async function allSheets(
  benches: readonly Bench[],
  sheets: readonly MarkoutSheet[],
  options: PrintOptions,
): Promise<MarkoutFile | null> {
  const all = inOne(benches, sheets, options);
  if (all === null) return null;
  const name = allSheetsName(benches[0]?.mirrored ?? false);
  return { name: `${name}.pdf`, as: 'pdf', content: await pdfOf(name, all, options) };
}

/** How many sheets of paper that one PDF takes; null where it is not made. */
export function allSheetsCount(...all: Parameters<typeof allSheets>): number | null {
  const scenes = inOne(...all);
  return scenes === null ? null : sheetCount(scenes, all[2]);
}

function inOne(
  benches: readonly Bench[],
  sheets: readonly MarkoutSheet[],
  options: PrintOptions,
): readonly Scene[] | null {
  const printed = sheets.filter((sheet) => paperFor(sheet, options).printable);
  const [bench] = benches;
  if (bench === undefined || printed.length < 2) return null;
  const scenes = printed.map((sheet) => sheet.scenes(false));
  const all = [...contents(bench, printed, scenes, options), ...scenes.flat()];
  return sheetCount(all, options) > mostSheets ? null : all;
}

export const allSheetsName = (mirrored: boolean): string => `all-sheets${mirrored ? '-mirrored' : ''}`;

/** The pages of contents; each fits one sheet of any paper. */
function contents(
  bench: Bench,
  sheets: readonly MarkoutSheet[],
  scenes: readonly (readonly Scene[])[],
  options: PrintOptions,
): Scene[] {
  const words = templateWords({ ...bench, both: false }, 'All sheets', [
    'Print at 100 %, no fit to page, and lay a rule on the check bars of one sheet before any of them is used.',
    'Sheets that were joined from several pages are true only where their crosses meet.',
  ]);
  const entries = sheets.map(({ name, purpose }, i): Entry => {
    const lines = wrapText(`${purpose}.`, sheetSizes.textMm, wordsMm - pageWordsMm);
    const pages = sheetCount(scenes[i] ?? [], options);
    return { name, purpose: lines, pages, heightMm: (lines.length + 2) * lineMm };
  });
  const parts = inSheets(entries, ({ heightMm }) => heightMm, roomUnderMm(words));
  let page = parts.length + 1;
  return parts.map((part) => {
    const layers: Layer[] = [];
    let y = 0;
    for (const entry of part) {
      layers.push(...entryLayers(entry, y, page));
      y -= entry.heightMm;
      page += entry.pages;
    }
    return templateSheet(words, [viewOf('contents', layers)], false);
  });
}

function entryLayers({ name, purpose, pages, heightMm }: Entry, y: number, page: number): Layer[] {
  const { textMm } = sheetSizes;
  const which = pages === 1 ? `sheet ${page}` : `sheets ${page} to ${page + pages - 1}`;
  const foot = y - heightMm + lineMm + 1;
  return [
    layer('text', [
      text(vec(0, y), name, textMm, { bold: true }),
      text(vec(wordsMm, y), which, textMm, { anchor: 'end' }),
      ...purpose.map((words, i) => text(vec(0, y - (i + 1) * lineMm), words, textMm)),
    ]),
    layer('leader', [line(vec(0, foot), vec(wordsMm, foot))]),
  ];
}
