import { createHash } from 'node:crypto';
import { Command } from 'commander';
import { version } from '../package.json';
import { heldViewer } from '../src/drawing/report/held-viewer.ts';
import { reportHtml } from '../src/drawing/report/report-html.ts';
import type { InputFile } from '../src/drawing/report/report-input.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import { findWays } from '../src/ways/find-ways.ts';
import { usualTurns } from '../src/ways/turns.ts';
import { planLine } from '../src/words/grind-text.ts';
import { verdictLine } from '../src/words/verdict.ts';
import { builtPage } from './built-page.ts';
import { loadBytes } from './load-text.ts';
import { openJob, type ReadFile } from './open-job.ts';
import { foreignFiles } from './own-kind.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { asAsked, straightFlag } from './straight-flag.ts';
import { print, say } from './terminal.ts';

const examples = `
One file, for whoever does the cutting: it opens from disk in any browser, needs no network, and prints on A4 or Letter.
The viewer is in it, with the job open: a button at its head leads there, and the reader can move the part.
Exit code: 0 the report was written, whatever it says, 2 an input is wrong.

Examples:
  fettle report profiles/marsh-carrier/transfer-case.fit.json -o transfer-case.html
  fettle report profiles/starter-boss/starter.fit.json -o starter.html --ways`;

/** `fettle report FIT -o FILE.html`: check, plan, drawings, marking-out table and cautions in one file. */
export function reportCommand(): Command {
  return new Command('report')
    .description('Writes the whole job as one HTML file: verdict, way in, cut, marking-out table, drawings, cautions.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .requiredOption('-o, --output <file>', 'the report to write, *.html')
    .option('--ways', 'add every way in of turning and sliding, 45° either way, and the map of them')
    .option(...straightFlag)
    .addHelpText('after', examples)
    .action(report);
}

interface ReportOptions {
  readonly output: string;
  readonly straight?: boolean;
  readonly ways?: boolean;
}

async function report(fitFile: string, { output, straight = false, ways = false }: ReportOptions): Promise<void> {
  const page = builtPage();
  await writeReport(fitFile, output, page.ok ? page.value : null, { straight, ways });
}

/** Writes the report of a fit, the viewer's page held in it where there is one; its lack is told, and no fault of the report. */
export async function writeReport(
  fitFile: string,
  output: string,
  page: string | null,
  { straight = false, ways = false, load = loadBytes } = {},
): Promise<void> {
  const foreign = foreignFiles([output]);
  if (foreign.length > 0) failWith(foreign);
  const { files, whole, ...opened } = openJob(fitFile, load);
  const joint = asAsked(opened.joint, straight);
  const found = analysisOf(joint);
  const check = runShowingProgress(found.check());
  const plan = runShowingProgress(found.plan());
  const html = reportHtml({
    joint,
    check,
    plan,
    tables: runShowingProgress(found.tables()),
    alternatives: runShowingProgress(found.alternatives()),
    room: runShowingProgress(found.room()),
    curve: runShowingProgress(found.curve()),
    curveAfter: runShowingProgress(found.curveAfter()),
    ways: ways ? runShowingProgress(findWays(joint, usualTurns)) : null,
    drill: runShowingProgress(found.drill()),
    forgives: runShowingProgress(found.forgives()),
    foretold: runShowingProgress(found.foretold()),
    inputs: files.map(hashed),
    date: today(),
    version,
    viewer: page === null ? null : await heldViewer(page, asAsked(whole, straight)),
  });
  save(output, html);
  print(`${verdictLine(check)}\n${planLine(joint, plan)}\nThe report: open ${output} in a browser; ${sizeText(html)}.`);
  if (page === null)
    say('The report holds no viewer to move the part in: the viewer is not built. npm run build makes it.');
}

const sizeText = (html: string): string => `${(Buffer.byteLength(html) / 1e6).toFixed(1)} MB`;

const hashed = ({ file, bytes }: ReadFile): InputFile => ({
  file,
  bytes: bytes.length,
  sha256: createHash('sha256').update(bytes).digest('hex'),
});

/** The date where the reader is, year first. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
