import { join } from 'node:path';
import { Command } from 'commander';
import { allSheets } from '../src/drawing/markout/all-sheets.ts';
import { type Markout, type MarkoutSheet, markoutOf } from '../src/drawing/markout/markout-sheets.ts';
import { type MarkoutFile, paperFor, sheetFiles } from '../src/drawing/markout/sheet-files.ts';
import type { PrintOptions } from '../src/drawing/pdf/pdf.ts';
import { shown } from '../src/files/shown.ts';
import type { Joint } from '../src/joint/joint.ts';
import { benchesOf } from '../src/markout/marking-out-bench.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import { alternativeTexts } from '../src/words/alternative-text.ts';
import { grindCautions } from '../src/words/cautions.ts';
import { planLine } from '../src/words/grind-text.ts';
import { listed, paragraph, wrapped } from '../src/words/layout.ts';
import { titleOf } from '../src/words/names.ts';
import { reasonTexts } from '../src/words/reasons.ts';
import { folderFor, makeFolder } from './folder.ts';
import { colouredAs, exitCodeOf } from './grind.ts';
import { openJob, orFail } from './open-job.ts';
import { foreignFiles } from './own-kind.ts';
import { type PrintFlags, printFlags, printOptions } from './print-flags.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { asAsked, straightFlag } from './straight-flag.ts';
import { endWith, print, printVerdictFirst } from './terminal.ts';

const examples = `
Print at 100 %, no fit to page, then lay a rule on the check bars of a sheet: 150 mm both ways, give or take 0.2.
If a printer is out, give what it made of them: --bars takes the x bar, along the short side of the paper, then y.
Sheets are seen looking at the mating face of the part that is cut, never mirrored unless asked.
Exit code: 0 the plan holds, 1 it does not, 3 undecided, 2 an input is wrong. Sheets of a plan
that does not hold are written all the same, and say so; where nothing is planned, none are.

Examples:
  fettle markout profiles/marsh-carrier/transfer-case.fit.json -o transfer-case
  fettle markout profiles/starter-boss/starter.fit.json -o starter --paper letter --bars 149.2,150.4`;

/** `fettle markout FIT -o DIR`: the marking-out table, templates and gauges of a plan, as PDF, SVG, DXF and CSV. */
export function markoutCommand(): Command {
  return new Command('markout')
    .description('Writes what a cut is marked out and proved with: table, face template, gauges and side strips.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .requiredOption('-o, --output <folder>', 'the folder to write to; made where there is none')
    .option(...printFlags.paper)
    .option(...printFlags.bars)
    .option(...straightFlag)
    .option('--mirror', 'mirror every sheet, and say so on each')
    .addHelpText('after', examples)
    .action(markout);
}

interface MarkoutFlags extends PrintFlags {
  readonly output: string;
  readonly straight?: boolean;
  readonly mirror?: boolean;
}

async function markout(fitFile: string, flags: MarkoutFlags): Promise<void> {
  const options = orFail(printOptions(fitFile, flags));
  const folder = folderFor(flags.output);
  const joint = asAsked(openJob(fitFile).joint, flags.straight ?? false);
  const found = analysisOf(joint);
  const plan = runShowingProgress(found.plan());
  const tables = runShowingProgress(found.tables());
  const benches = benchesOf(joint, plan, tables, flags.mirror ?? false);
  const made = markoutOf(benches);
  const all = await allSheets(benches, made.sheets, options);
  const single = (await Promise.all(made.sheets.map((sheet) => sheetFiles(sheet, options)))).flat();
  const files = all === null ? single : [all, ...single];
  const outputs = files.map(({ name, content }) => ({ path: join(folder, name), content }));
  const foreign = foreignFiles(outputs.map(({ path }) => path));
  if (foreign.length > 0) failWith(foreign);
  if (outputs.length > 0) makeFolder(folder);
  for (const { path, content } of outputs) save(path, content);
  const text = [
    ...wrapped(planLine(joint, plan), ''),
    titleOf(joint),
    ...paragraph('Why nothing is planned', listed(reasonTexts(joint, plan))),
    ...(plan.reason === null
      ? writtenLines(joint, made, all, folder, options)
      : ['', 'Nothing is planned, so there is nothing to mark out; no sheets were written.']),
  ].join('\n');
  printVerdictFirst(text, colouredAs(plan));
  // last, since it may take many times as long as the sheets
  const others = paragraph(
    'What else would give',
    listed(alternativeTexts(joint, runShowingProgress(found.alternatives()))),
  );
  if (others.length > 0) print(others.join('\n'));
  endWith(exitCodeOf(plan));
}

function writtenLines(
  joint: Joint,
  { sheets, notMade }: Markout,
  all: MarkoutFile | null,
  folder: string,
  options: PrintOptions,
): string[] {
  if (sheets.length === 0) return ['', 'Nothing is cut, so there is nothing to mark out; nothing was written.'];
  const made = [
    ...(all === null ? [] : [`${all.name}: all of it to print in one, with a page of contents.`]),
    ...sheets.map((sheet) => `${sheet.name}: ${sheet.purpose}. ${endingsOf(sheet, options)}.`),
  ];
  return [
    ...paragraph(`Written to ${shown(folder)}, PDF for ${options.paper.name}`, listed(made)),
    ...paragraph('Not made', listed(notMade)),
    ...paragraph(
      'At the bench',
      listed([
        'Print at 100 %, no fit to page. Lay a rule on the check bars: 150 mm both ways, give or take 0.2; if not, give what you read to --bars.',
        'Grind to the first line and offer up. Go on only where it marks, and never past the last line.',
      ]),
    ),
    ...paragraph('Take care', listed(grindCautions(joint))),
  ];
}

function endingsOf(sheet: MarkoutSheet, options: PrintOptions): string {
  const { count, printable } = paperFor(sheet, options);
  const pdf = printable
    ? `PDF (${count} sheet${count === 1 ? '' : 's'})`
    : `no PDF (${count} sheets would be too many)`;
  return [
    pdf,
    ...(sheet.csv === null ? ['SVG'] : []),
    ...(sheet.dxf === null ? [] : ['DXF']),
    ...(sheet.csv === null ? [] : ['CSV']),
  ].join(', ');
}
