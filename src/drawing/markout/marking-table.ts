import { lengthText } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import type { MarkingRow } from '../../markout/marking-row.ts';
import { markingWords } from '../../words/marking-words.ts';
import { axisName, shortName } from '../../words/names.ts';
import { stopRangeTexts } from '../../words/trial-text.ts';
import { degreesText } from '../../words/units.ts';
import { barDepth } from '../fit/depth-words.ts';
import type { Scene } from '../scene/scene.ts';
import { type Column, tableSheets } from './sheet-table.ts';
import { firstTouchWords, templateWords } from './template-words.ts';

/** The marking-out table on paper, as many sheets as it takes. */
export const tableScenes = (bench: Bench, rows: readonly MarkingRow[], withBars: boolean): Scene[] =>
  tableSheets(
    (sheet) => templateWords(bench, `Marking-out table${sheet}`, steps(bench, rows)),
    columnsOf(rows, bench.joint.fit.units),
    rows,
    withBars,
  );

function steps(bench: Bench, rows: readonly MarkingRow[]): string[] {
  const { joint, present, mirrored, touch } = bench;
  return [
    ...markingWords(shortName(present), axisName(joint), joint.fit.units, rows, mirrored),
    ...(touch === null
      ? []
      : [
          `As the parts are, it first touches on the way in at ${firstTouchWords(touch, bench)}.`,
          ...stopRangeTexts(joint, touch.foretold),
        ]),
  ];
}

/** Why a place is marked, and that it is measured as a tip. */
export const whyText = ({ kind, wholeTip }: MarkingRow): string => (wholeTip ? `${kind}, tip` : kind);

/** What the table says of each place, in the order of its columns. */
export function columnsOf(rows: readonly MarkingRow[], units: Units): Column<MarkingRow>[] {
  const mm = (value: number | undefined): string =>
    value === undefined ? '' : lengthText(value, units).replace(` ${units}`, '');
  const names = rows[0]?.dividers?.map(({ from }) => from) ?? [];
  const set = names.map(
    (name, i): Column<MarkingRow> => ({
      heading: ['dividers', name],
      of: ({ dividers }) => mm(dividers?.[i]?.setMm ?? undefined),
    }),
  );
  return [
    { heading: ['', 'no.'], of: ({ place }) => String(place), bold: true },
    { heading: ['', 'section'], of: ({ section }) => section, isName: true },
    { heading: ['from', 'face'], of: ({ depth }) => barDepth(depth, units) },
    { heading: ['', 'why'], of: whyText },
    ...set.filter(({ of }) => rows.some((row) => of(row) !== '')),
    ...names.map(
      (name, i): Column<MarkingRow> => ({ heading: ['in plan', name], of: ({ dividers }) => mm(dividers?.[i]?.mm) }),
    ),
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
