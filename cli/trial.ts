import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import { Command } from 'commander';
import { trialAnswer } from '../src/answers/trial.ts';
import type { Verdict } from '../src/clearance/check-result.ts';
import { trialEnding } from '../src/files/file-endings.ts';
import { fileText } from '../src/files/file-text.ts';
import { shown } from '../src/files/shown.ts';
import type { TrialFile } from '../src/files/trial-file.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import { readTrial, solveTrial } from '../src/pipeline/trial.ts';
import { readTrialFile } from '../src/trial/read-trial.ts';
import type { TrialResult } from '../src/trial/trial-result.ts';
import { counted, listed, paragraph } from '../src/words/layout.ts';
import { titleOf } from '../src/words/names.ts';
import { foretoldTexts, trialText } from '../src/words/trial-text.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { loadText } from './load-text.ts';
import { type OpenedJob, openJob, orFail } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { endWith, print, printJson, printVerdictFirst, say } from './terminal.ts';
import { type AddFlags, withAdded } from './trial-add.ts';

const examples = `
What to do:
  foretell   where it will stop before anything is cut, and within what (the default)
  add        keep what was read at a trial fit in a trial file
  solve      what all readings say together, what to measure next, and what is left to cut

Readings are written as pairs, parted by commas; lengths in the units of the fit, angles in degrees:
  --clay place=7,thickness=2.3               at a place of the marking-out table, home
  --clay section=ribs,at=150.2/101,depth=20,thickness=2.3,error=0.1
  --mark section=ribs,at=161/66,depth=25,touched=yes,turn=12.4,standOff=14
  --stopped turn=12.4,standOff=14,error=0.3  or dowel=D1,fromHole=35.1, or home
  --took 7=5.2                               taken off at place 7, measured
  --face at=0/170,gap=0.2                    a feeler gauge between the faces

Exit code of solve: 0 the readings are explained, 1 something has to be measured again, 3 not settled,
2 an input is wrong; nothing is written then.

Examples:
  fettle trial profiles/marsh-carrier/transfer-case.fit.json
  fettle trial my.fit.json add --go 1 --cut none --stopped dowel=D1,fromHole=36.9
  fettle trial profiles/marsh-carrier/transfer-case.fit.json solve`;

/** `fettle trial FIT [foretell|add|solve]`: what a trial fit will show, what it showed, and what that teaches. */
export function trialCommand(): Command {
  const collect = (value: string, before: readonly string[] = []): string[] => [...before, value];
  return new Command('trial')
    .description('Learns from offering up: where it stopped, witness marks and modelling clay correct the outlines.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .argument('[what]', 'foretell, add or solve', 'foretell')
    .option('--trial <file>', 'the trial file; default beside the fit, with the ending .trial.json')
    .option('--go <n>', 'add: which go; default the last one there is')
    .option('--date <date>', 'add: of the go, such as 2026-11-30')
    .option('--cut <how>', 'add: what had come off by then: none, first or planned')
    .option('--took <place=depth>', 'add: taken off at a place of the table, measured there', collect)
    .option('--stopped <where>', 'add: where it stopped, or home', undefined)
    .option('--clay <reading>', 'add: modelling clay', collect)
    .option('--mark <reading>', 'add: a witness mark, or a place that has none', collect)
    .option('--face <reading>', 'add: a feeler gauge between the faces', collect)
    .option('--note <text>', 'add: whatever else there is to say')
    .option('--json', 'solve: print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(trial);
}

interface TrialFlags extends AddFlags {
  readonly trial?: string;
  readonly json?: boolean;
}

function trial(fitFile: string, what: string, flags: TrialFlags): void {
  const job = openJob(fitFile);
  const file = flags.trial ?? `${fitFile.replace(/\.(fit|job)\.json$/, '')}${trialEnding}`;
  const does = {
    foretell: () => foretell(job),
    add: () => add(job, fitFile, file, flags),
    solve: () => solve(job, file, flags),
  };
  if (!Object.hasOwn(does, what))
    failWith([{ file: fitFile, at: 'what to do', found: shown(what), expected: 'foretell, add or solve' }]);
  does[what as keyof typeof does]();
}

function foretell({ joint }: OpenedJob): void {
  const texts = foretoldTexts(joint, runShowingProgress(analysisOf(joint).foretold()));
  print([titleOf(joint), ...paragraph('Before anything is cut', listed(texts))].join('\n'));
}

function add(job: OpenedJob, fitFile: string, file: string, flags: AddFlags): void {
  const found = analysisOf(job.joint);
  const before: TrialFile = existsSync(file)
    ? orFail(readTrialFile(file, orFail(loadText(file))))
    : { format: 'fettle-trial/1', fit: basename(fitFile), job: digestOf(job), goes: [] };
  const tables =
    flags.cut === undefined && flags.took === undefined && !asksForPlaces(flags)
      ? null
      : runShowingProgress(found.tables());
  const added = orFail(withAdded(job.joint, file, before, flags, tables?.[0] ?? []));
  // what cannot be is refused before it is kept
  orFail(runShowingProgress(readTrial(found, file, added)));
  save(file, fileText(added));
  warnOfChange(job, before);
  const go = added.goes.at(-1);
  print(
    `${file}: ${added.goes.length === 1 ? '1 go' : `${added.goes.length} goes`}, the last with ${counted(go?.readings?.length ?? 0, 'reading')}.`,
  );
}

const asksForPlaces = ({ clay = [], mark = [] }: AddFlags): boolean =>
  [...clay, ...mark].some((reading) => /(^|,)\s*place\s*=/.test(reading));

function solve(job: OpenedJob, file: string, { json = false }: TrialFlags): void {
  const { joint } = job;
  const raw = orFail(readTrialFile(file, orFail(loadText(file))));
  warnOfChange(job, raw);
  const found = analysisOf(joint);
  const result = orFail(runShowingProgress(solveTrial(found, file, raw)));
  if (json) printJson(trialAnswer(joint, result, runShowingProgress(found.foretold())));
  else printVerdictFirst(trialText(joint, result), colours[result.explanation.conclusion]);
  endWith(codes[result.explanation.conclusion]);
}

type Conclusion = TrialResult['explanation']['conclusion'];

const colours: Readonly<Record<Conclusion, Verdict>> = {
  explained: 'goes',
  partly: 'undecided',
  'too-little': 'undecided',
  'traced-wrong': 'fouls',
  unexplained: 'fouls',
};

const codes: Readonly<Record<Conclusion, ExitCode>> = {
  explained: exitCodes.meets,
  partly: exitCodes.undecided,
  'too-little': exitCodes.undecided,
  'traced-wrong': exitCodes.doesNotMeet,
  unexplained: exitCodes.doesNotMeet,
};

const digestOf = ({ whole }: OpenedJob): string =>
  createHash('sha256').update(JSON.stringify(whole)).digest('hex').slice(0, 16);

/** Readings of another job are of places that may have moved since. */
function warnOfChange(job: OpenedJob, { job: digest }: TrialFile): void {
  if (digest === undefined || digest === digestOf(job)) return;
  say(
    'The job has changed since this trial file was begun: what was read then may be of outlines that are no longer these.',
  );
}
