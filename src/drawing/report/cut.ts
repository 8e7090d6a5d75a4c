import { alternativeTexts } from '../../words/alternative-text.ts';
import { boundsOf, nothingToCut, planLine } from '../../words/grind-text.ts';
import { inWords } from '../../words/layout.ts';
import { measureRows } from '../../words/measure-text.ts';
import { shortName } from '../../words/names.ts';
import { type CutOfPart, partCuts } from '../../words/part-cuts.ts';
import { afterCutOf } from '../../words/plan-answer.ts';
import { keepOffTexts, linesText, pieceTexts, takeOffRows, uncuredTexts, wallTexts } from '../../words/plan-text.ts';
import { amountFacts, markingWords } from '../../words/report-text.ts';
import { straightTexts } from '../../words/straight-text.ts';
import { columnsOf } from '../markout/marking-table.ts';
import { facts, type Html, list, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

type Told = Html | null;

/** What comes off, per part, section and band, and what it leaves. */
export function takeOff(input: ReportInput): Told {
  const { joint, plan } = input;
  const { answer } = plan;
  const cuts = !nothingToCut(answer);
  const names = inWords(partCuts(joint, answer).map(({ casting }) => shortName(casting)));
  return section(
    'take-off',
    cuts ? `What to take off ${names}` : 'What to take off',
    paragraphs([planLine(joint, answer)]),
    ...(cuts ? partCuts(joint, answer).flatMap((cut, i) => offPart(input, cut, i)) : []),
    ...subheading('Left standing in the way', list(uncuredTexts(joint, answer))),
    cuts ? table('Clearance after the cut', measureRows(joint, afterCutOf(answer))) : null,
    list(boundsOf(joint, answer)),
  );
}

/** What comes off one part; its name is said where both are cut. */
function offPart({ joint, plan, planFacts }: ReportInput, of: CutOfPart, i: number): Told[] {
  const bands = planFacts[i] ?? [];
  const name = plan.answer.movingCut === null ? '' : ` off ${shortName(of.casting)}`;
  if (of.cut.sections.length === 0) return paragraphs([`Nothing comes${name}.`]);
  return [
    table(`Metal to come${name || ' off'}, by section and band`, takeOffRows(joint, of.cut, bands)),
    ...paragraphs([linesText]),
    ...subheading(`Where${name && ` it comes${name}`}`, list(pieceTexts(joint, bands))),
    ...subheading(`How much in all${name}`, facts(amountFacts(joint, of))),
    ...subheading(`Straight edges${name}`, list(straightTexts(joint, of.cut))),
  ];
}

/** What else would give where the plan does not hold; left out where it does. */
export const alternatives = ({ joint, plan }: ReportInput): Told =>
  section('alternatives', 'What else would give', list(alternativeTexts(joint, plan.answer)));

/** The marking-out table of each part that is cut; left out where nothing is. */
export function markingOut({ joint, plan }: ReportInput): Told {
  const tables = partCuts(joint, plan.answer).filter(({ cut }) => cut.table.length > 0);
  const heading = tables.length > 1 ? 'Marking-out tables' : 'Marking-out table';
  return section('marking-out', heading, ...tables.flatMap((of) => markingTable(joint.fit.units, of)));
}

function markingTable(
  units: ReportInput['joint']['fit']['units'],
  { casting, cut: { table: rows } }: CutOfPart,
): Told[] {
  const columns = columnsOf(rows, units).filter(({ of }) => rows.some((row) => of(row) !== ''));
  const heads = columns.map(({ heading: [over, under] }) => `${over} ${under}`.trim());
  const part = shortName(casting);
  return [
    ...paragraphs(markingWords(part, units, rows[0]?.dividers?.map(({ from }) => from) ?? [])),
    table(`Places on the planned line of ${part}, lengths in ${units}`, [
      heads,
      ...rows.map((row) => columns.map(({ of }) => of(row))),
    ]),
  ];
}

/** Walls, and what is not to be touched; left out where nobody need cut anything. */
export function keepOff({ joint, plan: { answer } }: ReportInput): Told {
  if (nothingToCut(answer) && answer.holds) return null;
  const cuts = partCuts(joint, answer);
  return section(
    'keep-off',
    'Walls and do not cut',
    ...subheading('Walls left behind the cut', list(wallTexts(joint, answer))),
    ...cuts.flatMap(({ casting }) => {
      const name = cuts.length === 1 ? '' : ` of ${shortName(casting)}`;
      return subheading(`Not to be cut${name}`, list(keepOffTexts(joint, casting)));
    }),
  );
}
