import { shown } from '../../files/shown.ts';
import type { Joint } from '../../joint/joint.ts';
import { benchesOf } from '../../markout/marking-out-bench.ts';
import type { MarkingTable } from '../../markout/marking-row.ts';
import type { PlanResult } from '../../plan/plan-result.ts';
import { type BarReading, barMm, isReading, mostOffMm } from '../scene/check-bars.ts';
import { isPaper, type PaperName, papers } from '../scene/papers.ts';
import { markoutOf } from './markout-sheets.ts';
import type { MarkoutFile } from './sheet-files.ts';

/** How sheets to mark out by are to be made. */
export interface MarkoutOptions {
  /** What the PDFs are printed on; A4 where it is not said. */
  readonly paper?: PaperName;
  /** What the printer made of the 150 mm check bars, within 10 mm of that: its error is taken off the PDFs. */
  readonly bars?: BarReading;
  /** Every sheet as seen in a mirror, and says so; never unless asked. */
  readonly mirrored?: boolean;
}

/** The files to mark out by, and in words why some sheets are not among them. */
export interface MarkoutFiles {
  readonly files: readonly MarkoutFile[];
  readonly notMade: readonly string[];
}

/**
 * What the cuts of a plan are marked out and proved with, at true scale: what `fettle markout` writes. The marking-out
 * table, the face template, gauges and side strips, all in one PDF with a page of contents and each by itself as PDF, as SVG with bars of its own or, a table, as CSV, and with
 * its outlines as DXF where it has any; a `content` is text, of a PDF bytes. Drawings are in mm, the figures of a CSV in
 * the units of the fit. There are none where nothing is planned or cut; those of a plan that does not hold are made all
 * the same, and say so. A PDF of more than 200 sheets of paper is not made.
 *
 * @param plan - and `tables`, of this joint, as the stages of its `Analysis` give them
 * @throws RangeError, as the promise's refusal, for a paper that is not known and for bars that no printer makes
 *
 * @example Housing and starter of the demo: what there is to print and to send to a laser cutter.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, drain, markoutFiles, readJob } from 'fettle';
 *
 * const fit = 'profiles/starter-boss/starter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, plan, tables } = found.value;
 * const { files, notMade } = await markoutFiles(joint, drain(plan()), drain(tables()), { paper: 'a3' });
 * const named = (kind: string) => files.flatMap(({ as, name }) => (as === kind ? [name] : [])).join(' ');
 * console.log(named('pdf')); // all-sheets.pdf marking-out.pdf profile-gauge-1-boss.pdf side-strips.pdf milling.pdf
 * console.log(named('dxf')); // marking-out.dxf profile-gauge-1-boss.dxf milling.dxf
 * console.log(notMade.length); // 2
 * ```
 */
export async function markoutFiles(
  joint: Joint,
  plan: PlanResult,
  tables: readonly MarkingTable[],
  { paper = 'a4', bars, mirrored = false }: MarkoutOptions = {},
): Promise<MarkoutFiles> {
  if (!isPaper(paper)) throw new RangeError(`paper: found ${shown(paper)}, expected ${Object.keys(papers).join(', ')}`);
  if (bars !== undefined && !isReading(bars)) {
    const found = shown([bars.xMm, bars.yMm]);
    throw new RangeError(`bars: found ${found}, expected two lengths in mm within ${mostOffMm} of ${barMm}`);
  }
  // what makes PDFs takes longer to load than all the rest, and only who asks for sheets needs it
  const [{ allSheets }, { paperFor, sheetFiles }] = await Promise.all([
    import('./all-sheets.ts'),
    import('./sheet-files.ts'),
  ]);
  const benches = benchesOf(joint, plan, tables, mirrored);
  const { sheets, notMade } = markoutOf(benches);
  const options = { paper: papers[paper], ...(bars === undefined ? {} : { bars }) };
  const all = await allSheets(benches, sheets, options);
  const files = await Promise.all(sheets.map((sheet) => sheetFiles(sheet, options)));
  const tooLarge = sheets.flatMap((sheet) => {
    const { count, printable } = paperFor(sheet, options);
    return printable ? [] : [`The PDF of ${sheet.name}: ${count} sheets of ${paper} are too many to join.`];
  });
  return { files: [...(all === null ? [] : [all]), ...files.flat()], notMade: [...notMade, ...tooLarge] };
}
