import { join } from 'node:path';
import { Command } from 'commander';
import { drillAnswer } from '../src/answers/drill.ts';
import type { Verdict } from '../src/clearance/check-result.ts';
import { drillFiles } from '../src/drawing/drill/drill-files.ts';
import type { PrintOptions } from '../src/drawing/pdf/pdf.ts';
import { type DrillResult, drillResult } from '../src/drill/drill-result.ts';
import type { DrillRules } from '../src/drill/hole-metal.ts';
import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import type { Joint } from '../src/joint/joint.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import { readLength } from '../src/typed/typed-length.ts';
import { gatheringIn, wrongValue } from '../src/typed/wrong-value.ts';
import { drillText } from '../src/words/drill-text.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { folderFor, makeFolder } from './folder.ts';
import { openJob, orFail } from './open-job.ts';
import { foreignFiles } from './own-kind.ts';
import { type PrintFlags, printFlags, printOptions } from './print-flags.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { endWith, printJson, printVerdictFirst, say } from './terminal.ts';

const examples = `
Holes of "kind": "planned" are judged; bolt holes that have no partner are marked on the other part, through the dowels.
Exit code: 0 there is metal for every planned hole, or with none planned for every one marked; 1 there is not,
3 undecided, 2 an input is wrong.

Examples:
  fettle drill profiles/mount-bracket/bracket.fit.json --socket 22
  fettle drill profiles/sae-3-adapter/adapter.fit.json --edge 2 --socket 28 --json
  fettle drill profiles/marsh-carrier/transfer-case.fit.json -o holes`;

/** `fettle drill FIT`: is there metal for the holes to be drilled, and where do the other part's come? */
export function drillCommand(): Command {
  return new Command('drill')
    .description('Tells whether there is metal for planned holes, and marks the bolt holes of one part on the other.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .option('--edge <diameters>', 'least distance from the middle of a hole to an edge, in its diameters', '1.5')
    .option('--drill-error <length>', 'how far a drill runs off by hand', '0.5')
    .option('--spot-face <diameter>', "under a bolt's head; default the washer of its thread")
    .option('--socket <diameter>', 'the outside of the socket that turns the bolt; default the washer of its thread')
    .option('--as-cast', 'judge the castings as they are, not as the planned cut leaves them')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .option('-o, --output <folder>', 'write templates at 1:1 (PDF, SVG), DXF, and a table of places (CSV)')
    .option(...printFlags.paper)
    .option(...printFlags.bars)
    .addHelpText('after', examples)
    .action(drill);
}

interface DrillFlags extends PrintFlags {
  readonly edge: string;
  readonly drillError: string;
  readonly spotFace?: string;
  readonly socket?: string;
  readonly asCast?: boolean;
  readonly json?: boolean;
  readonly output?: string;
}

async function drill(fitFile: string, flags: DrillFlags): Promise<void> {
  const rules = orFail(rulesOf(flags));
  const options = orFail(printOptions(fitFile, flags));
  const folder = flags.output === undefined ? null : folderFor(flags.output);
  const { joint } = openJob(fitFile);
  const plan = flags.asCast ? null : runShowingProgress(analysisOf(joint).plan());
  const result = drillResult(joint, plan, rules);
  const outcome = outcomeOf(result);
  if (flags.json) printJson(drillAnswer(joint, result));
  else printVerdictFirst(drillText(joint, result), outcome);
  if (folder !== null) await write(folder, joint, result, options);
  endWith(codes[outcome]);
}

type Outcome = 'goes' | 'should-go' | 'fouls' | 'undecided';

function outcomeOf({ planned, transfer, refusal, handIsShown }: DrillResult): Outcome & Verdict {
  const judged = planned.length > 0 ? planned : transfer.marked;
  const has = (verdict: string): boolean => judged.some((hole) => hole.verdict === verdict);
  if (has('does-not')) return 'fouls';
  if (has('undecided') || (planned.length === 0 && refusal !== null)) return 'undecided';
  return has('as-traced') || !handIsShown ? 'should-go' : 'goes';
}

const codes: Readonly<Record<Outcome, ExitCode>> = {
  goes: exitCodes.meets,
  'should-go': exitCodes.meets,
  fouls: exitCodes.doesNotMeet,
  undecided: exitCodes.undecided,
};

const [leastEdge, mostEdge] = [0.5, 10];

function rulesOf(flags: DrillFlags): Reading<DrillRules> {
  const findings: Finding[] = [];
  const given = gatheringIn(findings);
  const rules = {
    edgeFactor: given(flags.edge, readEdge),
    drillErrorMm: given(flags.drillError, (text) => readLength('--drill-error', text, '0 or more')),
    spotFaceMm: given(flags.spotFace, (text) => readLength('--spot-face', text, 'more than 0')),
    socketMm: given(flags.socket, (text) => readLength('--socket', text, 'more than 0')),
  };
  const { edgeFactor, drillErrorMm } = rules;
  if (edgeFactor === null || drillErrorMm === null || findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { ...rules, edgeFactor, drillErrorMm } };
}

function readEdge(text: string): Reading<number> {
  const edge = text.trim() === '' ? Number.NaN : Number(text);
  if (edge >= leastEdge && edge <= mostEdge) return { ok: true, value: edge };
  return wrongValue('--edge', shown(text), `diameters from ${leastEdge} to ${mostEdge}, such as 1.5`);
}

async function write(folder: string, joint: Joint, result: DrillResult, options: PrintOptions): Promise<void> {
  const files = (await drillFiles(joint, result, options)).map(({ name, content }) => ({
    path: join(folder, name),
    content,
  }));
  if (files.length === 0) {
    say('There is nothing to drill, so nothing was written.');
    return;
  }
  const foreign = foreignFiles(files.map(({ path }) => path));
  if (foreign.length > 0) failWith(foreign);
  makeFolder(folder);
  for (const { path, content } of files) save(path, content);
  say(`Written: ${files.map(({ path }) => path).join(', ')}. Print at 100 %, and lay a rule on the check bars.`);
}
