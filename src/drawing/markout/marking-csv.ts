import type { Casting } from '../../job/casting.ts';
import { figure, lengthText } from '../../job/length-text.ts';
import type { Joint } from '../../joint/joint.ts';
import type { MarkingRow } from '../../markout/marking-row.ts';
import { axisName, shortName } from '../../words/names.ts';
import { type CsvColumn, csvOf } from './csv.ts';

/** The columns of the table; the dividers' names are those of the rows, so that a column is one setting. */
export function markingColumns(rows: readonly MarkingRow[], part: Casting, joint: Joint): CsvColumn<MarkingRow>[] {
  const { units } = joint.fit;
  const axis = axisName(joint);
  const mm = (value: number | null | undefined): string =>
    value === null || value === undefined ? '' : lengthText(value, units).replace(` ${units}`, '');
  const names = rows[0]?.dividers?.map(({ from }) => from) ?? [];
  const face = `looking at the mating face of ${shortName(part)}`;
  return [
    { heading: 'place', of: ({ place }) => String(place) },
    { heading: 'section', of: ({ section }) => section },
    { heading: 'edge', of: ({ edge }) => String(edge) },
    { heading: 'kind', of: ({ kind }) => kind },
    { heading: 'whole tip', of: ({ wholeTip }) => (wholeTip ? 'yes' : '') },
    { heading: `along the edge (${units})`, of: ({ alongMm }) => mm(alongMm) },
    { heading: `from face: from (${units})`, of: ({ depth }) => mm(depth?.fromMm) },
    { heading: `from face: to (${units})`, of: ({ depth }) => mm(depth?.toMm) },
    ...names.map((name, i) => ({
      heading: `divider from ${name} (${units})`,
      of: ({ dividers }: MarkingRow) => mm(dividers?.[i]?.setMm),
    })),
    ...names.map((name, i) => ({
      heading: `in plan from ${name} (${units})`,
      of: ({ dividers }: MarkingRow) => mm(dividers?.[i]?.mm),
    })),
    {
      heading: `angle from ${axis} (deg anticlockwise from 3 o'clock, ${face})`,
      of: ({ angleRad }) => figure((angleRad * 180) / Math.PI, 1),
    },
    { heading: `radius from ${axis} (${units})`, of: ({ radiusMm }) => mm(radiusMm) },
    { heading: `take off: first line (${units})`, of: ({ firstMm }) => mm(firstMm) },
    { heading: `take off: planned (${units})`, of: ({ plannedMm }) => mm(plannedMm) },
    { heading: `take off: last line (${units})`, of: ({ lastMm }) => mm(lastMm) },
    { heading: `wall left as planned (${units})`, of: ({ wall }) => mm(wall?.nominalMm) },
    { heading: `wall left at worst (${units})`, of: ({ wall }) => mm(wall?.wallMm) },
    { heading: 'wall to', of: ({ wall }) => wall?.hollow ?? '' },
  ];
}

/** The marking-out table as CSV (RFC 4180): comma and point whatever the country, lengths in the fit's units, to 0.1 mm. */
export function markingCsv(rows: readonly MarkingRow[], part: Casting, joint: Joint): string {
  return csvOf(markingColumns(rows, part, joint), rows);
}
