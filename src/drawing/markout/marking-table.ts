import { vec } from '../../geometry/plane/vec.ts';
import { lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import type { MarkingRow } from '../../markout/marking-row.ts';
import { markingWords } from '../../words/marking-words.ts';
import { axisName, shortName } from '../../words/names.ts';
import { degreesText } from '../../words/units.ts';
import { barDepth } from '../fit/depth-words.ts';
import { layer, line, text, viewOf } from '../scene/marks.ts';
import type { Scene, TextMark, View } from '../scene/scene.ts';
import { fitText, textWidthMm } from '../scene/text-size.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { firstTouchWords, templateWords } from './template-words.ts';

/** A column of the table on paper. */
export interface Column {
  readonly heading: readonly [string, string];
  readonly of: (row: MarkingRow) => string;
  readonly bold?: boolean;
  /** Names give way where the sheet is too narrow; figures are never cut. */
  readonly isName?: boolean;
}

/** Rows to a sheet: with its words above them they stay within A4 and Letter upright. */
const rowsPerSheet = 32;
const rowMm = 5;

/** The marking-out table on paper, as many sheets as it takes. */
export function tableScenes(bench: Bench, rows: readonly MarkingRow[], withBars: boolean): Scene[] {
  const sheets = Array.from({ length: Math.ceil(rows.length / rowsPerSheet) }, (_, i) =>
    rows.slice(i * rowsPerSheet, (i + 1) * rowsPerSheet),
  );
  return sheets.map((some, i) => {
    const title = sheets.length === 1 ? 'Marking-out table' : `Marking-out table, ${i + 1} of ${sheets.length}`;
    return templateSheet(templateWords(bench, title, steps(bench, rows)), [tableView(bench, some)], withBars);
  });
}

function steps(bench: Bench, rows: readonly MarkingRow[]): string[] {
  const { joint, present, mirrored, touch } = bench;
  return [
    ...markingWords(shortName(present), axisName(joint), joint.fit.units, rows, mirrored),
    ...(touch === null
      ? []
      : [`As the parts are, it first touches on the way in at ${firstTouchWords(touch, bench)}.`]),
  ];
}

/** Why a place is marked, and that it is measured as a tip. */
export const whyText = ({ kind, wholeTip }: MarkingRow): string => (wholeTip ? `${kind}, tip` : kind);

/** What the table says of each place, in the order of its columns. */
export function columnsOf(rows: readonly MarkingRow[], units: Units): Column[] {
  const mm = (value: number | undefined): string =>
    value === undefined ? '' : lengthText(value, units).replace(` ${units}`, '');
  const names = rows[0]?.dividers?.map(({ from }) => from) ?? [];
  const set = names.map(
    (name, i): Column => ({ heading: ['dividers', name], of: ({ dividers }) => mm(dividers?.[i]?.setMm ?? undefined) }),
  );
  return [
    { heading: ['', 'no.'], of: ({ place }) => String(place), bold: true },
    { heading: ['', 'section'], of: ({ section }) => section, isName: true },
    { heading: ['from', 'face'], of: ({ depth }) => barDepth(depth, units) },
    { heading: ['', 'why'], of: whyText },
    ...set.filter(({ of }) => rows.some((row) => of(row) !== '')),
    ...names.map((name, i): Column => ({ heading: ['in plan', name], of: ({ dividers }) => mm(dividers?.[i]?.mm) })),
    { heading: ['', 'angle'], of: ({ angleRad }) => degreesText((angleRad * 180) / Math.PI) },
    { heading: ['', 'radius'], of: ({ radiusMm }) => mm(radiusMm) },
    { heading: ['take off', 'first'], of: ({ firstMm }) => mm(firstMm) },
    { heading: ['', 'planned'], of: ({ plannedMm }) => mm(plannedMm), bold: true },
    { heading: ['', 'last'], of: ({ lastMm }) => mm(lastMm) },
    {
      heading: ['wall left', 'plan/worst'],
      of: ({ wall }) => (wall === null ? '' : `${mm(wall.nominalMm)} / ${mm(wall.wallMm)}`),
    },
    { heading: ['', 'to'], of: ({ wall }) => wall?.hollow ?? '', isName: true },
  ];
}

const betweenMm = 1.8;
/** As wide as A4 has room for between its margins, mm. */
const tableMm = 186;

/** How wide each column is: as its longest entry, names in what figures leave of the sheet. */
function widthsOf(columns: readonly Column[], rows: readonly MarkingRow[]): number[] {
  const { textMm } = sheetSizes;
  const widest = columns.map(({ heading: [over, under], of, bold }) =>
    Math.max(
      textWidthMm(over, textMm),
      textWidthMm(under, textMm, true),
      ...rows.map((row) => textWidthMm(of(row), textMm, bold)),
    ),
  );
  const sum = (which: (column: Column) => boolean): number =>
    columns.reduce((mm, column, i) => mm + (which(column) ? (widest[i] as number) : 0), 0);
  const leftMm = tableMm - betweenMm * columns.length - sum(({ isName }) => !isName);
  const shrunk = Math.min(1, Math.max(0, leftMm) / sum(({ isName }) => isName === true));
  return columns.map(({ isName }, i) => betweenMm + (widest[i] as number) * (isName ? shrunk : 1));
}

function tableView({ joint }: Bench, rows: readonly MarkingRow[]): View {
  const columns = columnsOf(rows, joint.fit.units);
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
