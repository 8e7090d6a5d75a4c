import { vec } from '../../geometry/plane/vec.ts';
import { layer, line, text, viewOf } from '../scene/marks.ts';
import type { Scene, TextMark, View } from '../scene/scene.ts';
import { fitText, textWidthMm } from '../scene/text-size.ts';
import { roomUnderMm, sheetSizes, templateSheet } from './template-sheet.ts';
import type { TemplateWords } from './template-words.ts';

/** A column of a table on paper. */
export interface Column<Row> {
  readonly heading: readonly [string, string];
  readonly of: (row: Row) => string;
  readonly bold?: boolean;
  /** Names give way where the sheet is too narrow; figures are never cut. */
  readonly isName?: boolean;
}

const rowMm = 5;
const headMm = 8;
const betweenMm = 1.8;
/** As wide as A4 has room for between its margins, mm. */
const tableMm = 186;

/** A table under its words on as many sheets as it takes, each of which fits any paper; told by how many there are. */
export function tableSheets<Row>(
  wordsOf: (sheet: string) => TemplateWords,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  withBars: boolean,
): Scene[] {
  const perSheet = Math.max(1, Math.floor((roomUnderMm(wordsOf(', 10 of 10')) - headMm) / rowMm));
  const count = Math.ceil(rows.length / perSheet);
  return Array.from({ length: count }, (_, i) => {
    const words = wordsOf(count === 1 ? '' : `, ${i + 1} of ${count}`);
    const some = rows.slice(i * perSheet, (i + 1) * perSheet);
    return templateSheet(words, [tableView(columns, some)], withBars);
  });
}

/** How wide each column is: as its longest entry, names in what figures leave of the sheet. */
function widthsOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): number[] {
  const { textMm } = sheetSizes;
  const widest = columns.map(({ heading: [over, under], of, bold }) =>
    Math.max(
      textWidthMm(over, textMm),
      textWidthMm(under, textMm, true),
      ...rows.map((row) => textWidthMm(of(row), textMm, bold)),
    ),
  );
  const sum = (which: (column: Column<Row>) => boolean): number =>
    columns.reduce((mm, column, i) => mm + (which(column) ? (widest[i] as number) : 0), 0);
  const leftMm = tableMm - betweenMm * columns.length - sum(({ isName }) => !isName);
  const shrunk = Math.min(1, Math.max(0, leftMm) / sum(({ isName }) => isName === true));
  return columns.map(({ isName }, i) => betweenMm + (widest[i] as number) * (isName ? shrunk : 1));
}

function tableView<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): View {
  const { textMm } = sheetSizes;
  const widths = widthsOf(columns, rows);
  const lefts = columns.map((_, i) => widths.slice(0, i).reduce((sum, mm) => sum + mm, 0));
  const widthMm = widths.reduce((sum, mm) => sum + mm, 0);
  const cell = (words: string, column: number, y: number, bold: boolean): TextMark => {
    const room = (widths[column] ?? 0) - 1;
    return text(vec(lefts[column] ?? 0, y), fitText(words, textMm, room, bold), textMm, { bold });
  };
  const heads = columns.flatMap(({ heading: [over, under] }, i) => [
    text(vec(lefts[i] ?? 0, 1.3 * textMm), over, textMm),
    cell(under, i, 0, true),
  ]);
  const body = rows.flatMap((row, r) =>
    columns.map(({ of, bold = false }, i) => cell(of(row), i, -(r + 1) * rowMm, bold)),
  );
  const rules = [0, ...rows.map((_, r) => r + 1)].map((r) => {
    const y = -r * rowMm - 1.4;
    return line(vec(0, y), vec(widthMm, y));
  });
  return viewOf('table', [
    layer('frame', rules.slice(0, 1)),
    layer('leader', rules.slice(1)),
    layer(
      'text',
      [...heads, ...body].filter(({ text }) => text !== ''),
    ),
  ]);
}
