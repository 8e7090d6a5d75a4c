import { boundsOf, nothingToCut, partOf, planLine } from '../../words/grind-text.ts';
import { measureRows } from '../../words/measure-text.ts';
import { shortName } from '../../words/names.ts';
import { keepOffTexts, linesText, pieceTexts, takeOffRows, uncuredTexts, wallTexts } from '../../words/plan-text.ts';
import { amountFacts, markingWords } from '../../words/report-text.ts';
import { straightTexts } from '../../words/straight-text.ts';
import { columnsOf } from '../marking-table.ts';
import { facts, type Html, list, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** What comes off, per section and band, and what it leaves. */
export function takeOff({ joint, plan: { answer }, planFacts }: ReportInput): Html | null {
  const heading = nothingToCut(answer) ? 'What to take off' : `What to take off ${shortName(partOf(joint, answer))}`;
  const cuts = !nothingToCut(answer);
  return section(
    'take-off',
    heading,
    paragraphs([planLine(joint, answer)]),
    cuts ? table('Metal to come off, by section and band', takeOffRows(joint, answer, planFacts)) : null,
    cuts ? paragraphs([linesText]) : null,
    ...subheading('Where', list(pieceTexts(joint, planFacts))),
    ...subheading('How much in all', cuts ? facts(amountFacts(joint, answer)) : null),
    ...subheading('Straight edges', list(straightTexts(joint, answer))),
    ...subheading('Left standing in the way', list(uncuredTexts(joint, answer))),
    cuts ? table('Clearance after the cut', measureRows(joint, { ...answer.afterCut, rotating: [] })) : null,
    list(boundsOf(joint, answer)),
  );
}

/** The marking-out table; left out where nothing is cut. */
export function markingOut({ joint, plan }: ReportInput): Html | null {
  const rows = plan.answer.table;
  if (rows.length === 0) return null;
  const { units } = joint.fit;
  const columns = columnsOf(rows, units).filter(({ of }) => rows.some((row) => of(row) !== ''));
  const heads = columns.map(({ heading: [over, under] }) => `${over} ${under}`.trim());
  const part = shortName(partOf(joint, plan.answer));
  return section(
    'marking-out',
    'Marking-out table',
    paragraphs(markingWords(part, units, rows[0]?.dividers?.map(({ from }) => from) ?? [])),
    table(`Places on the planned line of ${part}, lengths in ${units}`, [
      heads,
      ...rows.map((row) => columns.map(({ of }) => of(row))),
    ]),
  );
}

/** Walls, and what is not to be touched; left out where nobody need cut anything. */
export function keepOff({ joint, plan: { answer } }: ReportInput): Html | null {
  if (nothingToCut(answer) && answer.holds) return null;
  return section(
    'keep-off',
    'Walls and do not cut',
    ...subheading('Walls left behind the cut', list(wallTexts(joint, answer))),
    ...subheading('Not to be cut', list(keepOffTexts(joint, partOf(joint, answer)))),
  );
}
