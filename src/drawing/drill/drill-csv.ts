import type { DrillResult } from '../../drill/drill-result.ts';
import type { JudgedHole } from '../../drill/planned-holes.ts';
import { figure, inUnits } from '../../job/length-text.ts';
import { otherPart } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { shortName } from '../../words/names.ts';
import { type CsvColumn, csvOf } from '../markout/csv.ts';

/**
 * The holes to be drilled as CSV (RFC 4180): comma and point whatever the country. Places in the drawing of the part they
 * are drilled in, in that part's own units, so that they can be typed into its file; the rest in the fit's.
 */
export function drillCsv(joint: Joint, { planned, transfer }: DrillResult): string {
  const { units } = joint.fit;
  const mm = (value: number | null): string =>
    value === null ? '' : figure(inUnits(value, units), units === 'mm' ? 2 : 4);
  const own = (value: number, { part }: JudgedHole): string =>
    figure(inUnits(value, joint[part].units), joint[part].units === 'mm' ? 3 : 4);
  const columns: CsvColumn<JudgedHole>[] = [
    { heading: 'hole', of: ({ hole }) => hole.id },
    { heading: 'in', of: ({ part }) => shortName(joint[part]) },
    {
      heading: 'from',
      of: ({ part, hole }) => (hole.kind === 'planned' ? 'planned' : shortName(joint[otherPart(part)])),
    },
    { heading: 'verdict', of: ({ verdict }) => verdict },
    { heading: `diameter (${units})`, of: ({ diameterMm }) => mm(diameterMm) },
    { heading: 'x in its drawing', of: (judged) => own(judged.inDrawing.x, judged) },
    { heading: 'y in its drawing', of: (judged) => own(judged.inDrawing.y, judged) },
    { heading: 'units of its drawing', of: ({ part }) => joint[part].units },
    { heading: `radius from the axis (${units})`, of: ({ radiusMm }) => mm(radiusMm) },
    {
      heading: "angle (deg anticlockwise from 3 o'clock, looking at the fixed face)",
      of: ({ angleRad }) => figure((angleRad * 180) / Math.PI, 2),
    },
    ...[0, 1].flatMap((i): CsvColumn<JudgedHole>[] => [
      { heading: `divider ${i + 1} from`, of: ({ dividers }) => dividers[i]?.from ?? '' },
      {
        heading: `divider ${i + 1} in plan (${units})`,
        of: ({ dividers }) => mm(dividers[i]?.mm ?? null),
      },
    ]),
    { heading: `least wall (${units})`, of: ({ metal }) => mm(metal?.walls[0]?.wallMm ?? null) },
    { heading: 'to', of: ({ metal }) => metal?.walls[0]?.name ?? '' },
  ];
  return csvOf(columns, [...planned, ...transfer.marked]);
}
