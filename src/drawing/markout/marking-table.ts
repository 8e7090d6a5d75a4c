import { vec } from '../../geometry/plane/vec.ts';
import { givenLength, lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { stepMm } from '../../markout/marking-out-places.ts';
import type { MarkingRow } from '../../markout/marking-row.ts';
import { shortName } from '../../words/names.ts';
import { degreesText } from '../../words/units.ts';
import { barDepth } from '../fit/depth-words.ts';
import { layer, line, text, viewOf } from '../scene/marks.ts';
import type { Scene, TextMark, View } from '../scene/scene.ts';
import { fitText } from '../scene/text-size.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { firstTouchWords, templateWords } from './template-words.ts';

interface Column {
  readonly heading: readonly [string, string];
  readonly widthMm: number;
  readonly of: (row: MarkingRow) => string;
  readonly bold?: boolean;
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

function steps(bench: Bench, [row]: readonly MarkingRow[]): string[] {
  const { joint, present, mirrored, touch } = bench;
  const { units } = joint.fit;
  const dividers =
    row?.dividers === null || row?.dividers === undefined
      ? 'There are no two holes to set dividers from'
      : `Set dividers or a trammel from ${row.dividers.map(({ from }) => from).join(' and ')}`;
  return [
    `${dividers}, or go by angle (anticlockwise from 3 o'clock, looking at the mating face of ${shortName(present)}${mirrored ? '; on mirrored sheets clockwise' : ''}) and radius from the crank. Lengths in ${units}.`,
    `Places are on the planned line, every ${givenLength(stepMm, units)} along each edge and at its ends, corners, deepest place and thinnest wall. Take off is square to the outside as it is now.`,
    'First line: must go whatever the error. Last line: never past it. Wall: as planned, and at worst from the last line with the errors taken off.',
    ...(touch === null
      ? []
      : [`As the parts are, it first touches on the way in at ${firstTouchWords(touch, bench)}.`]),
  ];
}

/** What the table says of each place, in the order of its columns. */
export function columnsOf(rows: readonly MarkingRow[], units: Units): Column[] {
  const mm = (value: number | undefined): string =>
    value === undefined ? '' : lengthText(value, units).replace(` ${units}`, '');
  const names = rows[0]?.dividers?.map(({ from }) => from) ?? [];
  const depthOf = ({ depth }: MarkingRow): string => barDepth(depth, units);
  return [
    { heading: ['', 'no.'], widthMm: 8, of: ({ place }) => String(place), bold: true },
    { heading: ['', 'section'], widthMm: 22, of: ({ section }) => section },
    { heading: ['from', 'face'], widthMm: 16, of: depthOf },
    { heading: ['', 'why'], widthMm: 15, of: ({ kind }) => kind },
    ...names.map(
      (name, i): Column => ({ heading: ['from', name], widthMm: 13, of: ({ dividers }) => mm(dividers?.[i]?.mm) }),
    ),
    { heading: ['', 'angle'], widthMm: 13, of: ({ angleRad }) => degreesText((angleRad * 180) / Math.PI) },
    { heading: ['', 'radius'], widthMm: 12, of: ({ radiusMm }) => mm(radiusMm) },
    { heading: ['take off', 'first'], widthMm: 10, of: ({ firstMm }) => mm(firstMm) },
    { heading: ['', 'planned'], widthMm: 14, of: ({ plannedMm }) => mm(plannedMm), bold: true },
    { heading: ['', 'last'], widthMm: 10, of: ({ lastMm }) => mm(lastMm) },
    {
      heading: ['wall left', 'plan/worst'],
      widthMm: 18,
      of: ({ wall }) => (wall === null ? '' : `${mm(wall.nominalMm)} / ${mm(wall.wallMm)}`),
    },
    { heading: ['', 'to'], widthMm: 20, of: ({ wall }) => wall?.hollow ?? '' },
  ];
}

function tableView({ joint }: Bench, rows: readonly MarkingRow[]): View {
  const columns = columnsOf(rows, joint.fit.units);
  const widthMm = columns.reduce((sum, column) => sum + column.widthMm, 0);
  const { textMm } = sheetSizes;
  const lefts = columns.map((_, i) => columns.slice(0, i).reduce((sum, column) => sum + column.widthMm, 0));
  const cell = (words: string, column: number, y: number, bold: boolean): TextMark => {
    const room = (columns[column]?.widthMm ?? 0) - 1;
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
