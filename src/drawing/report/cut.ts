import type { Joint } from '../../joint/joint.ts';
import { type Bench, benchesOf } from '../../markout/marking-out-bench.ts';
import type { MarkingTable } from '../../markout/marking-row.ts';
import type { PartCut } from '../../plan/part-cut.ts';
import { alternativeTexts } from '../../words/alternative-text.ts';
import { afterCutRows, boundsOf, nothingToCut, planLine } from '../../words/grind-text.ts';
import { inWords } from '../../words/layout.ts';
import { markingWords } from '../../words/marking-words.ts';
import { axisName, shortName } from '../../words/names.ts';
import { nameCut } from '../../words/part-cuts.ts';
import { keepOffTexts, linesText, pieceTexts, takeOffRows, uncuredTexts, wallTexts } from '../../words/plan-text.ts';
import { amountFacts } from '../../words/report-text.ts';
import { straightTexts } from '../../words/straight-text.ts';
import { columnsOf } from '../markout/marking-table.ts';
import { numberedPicture } from '../markout/numbered-picture.ts';
import { sheetSizes } from '../markout/template-sheet.ts';
import type { View } from '../scene/scene.ts';
import { figure, sceneOf } from './figures.ts';
import { el, facts, type Html, list, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

type OptionalHtml = Html | null;

/** What comes off, per part, section and band, and what it leaves. */
export function takeOff(input: ReportInput): OptionalHtml {
  const { joint, plan } = input;
  const cuts = !nothingToCut(plan);
  const names = inWords(plan.cuts.map((cut) => nameCut(joint, cut)));
  return section(
    'take-off',
    cuts ? `What to take off ${names}` : 'What to take off',
    paragraphs([planLine(joint, plan)]),
    ...(cuts ? plan.cuts.flatMap((cut) => offPart(input, cut)) : []),
    ...subheading('Left standing in the way', list(uncuredTexts(joint, plan))),
    cuts ? table('Clearance after the cut', afterCutRows(joint, plan)) : null,
    list(boundsOf(joint, plan)),
  );
}

/** What comes off one part; its name is said where both are cut. */
function offPart({ joint, plan }: ReportInput, cut: PartCut): OptionalHtml[] {
  const name = plan.cuts.length === 1 ? '' : ` off ${nameCut(joint, cut)}`;
  if (cut.sections.length === 0) return paragraphs([`Nothing comes${name}.`]);
  return [
    table(`Metal to come${name || ' off'}, by section and band`, takeOffRows(joint, cut)),
    ...paragraphs([linesText]),
    ...subheading(`Where${name && ` it comes${name}`}`, list(pieceTexts(joint, cut))),
    ...subheading(`How much in all${name}`, facts(amountFacts(joint, cut))),
    ...subheading(`Straight edges${name}`, list(straightTexts(joint, cut))),
  ];
}

/** What else would give where the plan does not hold; left out where it does. */
export const alternatives = ({ joint, alternatives }: ReportInput): OptionalHtml =>
  section('alternatives', 'What else would give', list(alternativeTexts(joint, alternatives)));

/** The marking-out table of each part that is cut; left out where nothing is. */
export function markingOut({ joint, plan, tables }: ReportInput): OptionalHtml {
  const benches = benchesOf(joint, plan, tables, false).filter(({ table }) => table.length > 0);
  const heading = benches.length > 1 ? 'Marking-out tables' : 'Marking-out table';
  return section(
    'marking-out',
    heading,
    ...benches.flatMap((bench) => [
      ...markingTable(joint, shortName(bench.present), bench.table),
      ...markedPicture(bench),
    ]),
  );
}

/** As wide as a page of the report has room for, mm. */
const pictureMm = 170;

/** The casting with the numbers of its table, and what is to be seen larger. */
function markedPicture(bench: Bench): OptionalHtml[] {
  const { whole, details } = numberedPicture(bench, pictureMm, pictureMm);
  const part = shortName(bench.present);
  const drawn = (view: View, caption: string, className: string): Html => {
    const on = { description: caption, penMm: sheetSizes.penMm };
    return figure(`${bench.cut}-${view.id}`, sceneOf([view], caption, on), caption, className);
  };
  return [
    drawn(whole, `Where the numbers of the table are on ${part}. Nothing is measured off this picture.`, 'wide'),
    el(
      'div',
      { class: 'beside' },
      details.map((view) => drawn(view, `Detail ${view.id.slice('detail-'.length).toUpperCase()}.`, 'small')),
    ),
  ];
}

function markingTable(joint: Joint, part: string, rows: MarkingTable): OptionalHtml[] {
  const { units } = joint.fit;
  const columns = columnsOf(rows, units).filter(({ of }) => rows.some((row) => of(row) !== ''));
  const heads = columns.map(({ heading: [over, under] }) => `${over} ${under}`.trim());
  return [
    ...paragraphs(markingWords(part, axisName(joint), units, rows)),
    table(`Places on the planned line of ${part}, lengths in ${units}`, [
      heads,
      ...rows.map((row) => columns.map(({ of }) => of(row))),
    ]),
  ];
}

/** Walls, and what is not to be touched; left out where nobody need cut anything. */
export function keepOff({ joint, plan }: ReportInput): OptionalHtml {
  if (nothingToCut(plan) && plan.holds) return null;
  return section(
    'keep-off',
    'Walls and do not cut',
    ...subheading('Walls left behind the cut', list(wallTexts(joint, plan))),
    ...plan.cuts.flatMap((cut) => {
      const name = plan.cuts.length === 1 ? '' : ` of ${nameCut(joint, cut)}`;
      return subheading(`Not to be cut${name}`, list(keepOffTexts(joint, joint[cut.part])));
    }),
  );
}
