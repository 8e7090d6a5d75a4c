import { Command } from 'commander';
import { checkAnswer } from '../src/answers/check.ts';
import type { CheckResult } from '../src/clearance/check-result.ts';
import { verifyCheck } from '../src/clearance/verify/verify.ts';
import { analysisOf } from '../src/pipeline/analysis.ts';
import { checkText } from '../src/words/check-text.ts';
import { reportVerification } from './doubts.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { openJob } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';
import { type Timing, timedCheck } from './timing.ts';

const examples = `
Exit code: 0 the clearance asked is met, 1 it is not, 3 undecided, 2 an input is wrong.

Examples:
  fettle check profiles/marsh-carrier/transfer-case.fit.json
  fettle check profiles/starter-boss/starter.fit.json --json
  fettle check profiles/sae-3-adapter/adapter.fit.json && echo "it goes"`;

/** `fettle check FIT`: the answer, and an exit code that tells it. */
export function checkCommand(): Command {
  return new Command('check')
    .description('Checks a fit: home, every leg of the way in, and the rotating parts, without sampling.')
    .argument('<fit>', 'the fit file, *.fit.json')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .option('--timing', 'with --json: add what each part of the work took, ms')
    .option('--verify', 'measure the answer again by other means, and say on standard error what came of it')
    .addHelpText('after', examples)
    .action(check);
}

interface CheckOptions {
  readonly json?: boolean;
  readonly timing?: boolean;
  readonly verify?: boolean;
}

function check(fitFile: string, { json = false, timing = false, verify = false }: CheckOptions): void {
  const { joint, readMs, dowelUpMs } = openJob(fitFile);
  const found = analysisOf(joint);
  const { value: result, ...checking } = runShowingProgress(timedCheck(found.check()));
  if (json)
    printJson({
      ...checkAnswer(joint, result),
      ...(timing && { timing: { readMs, dowelUpMs, ...checking } satisfies Timing }),
    });
  else printVerdictFirst(checkText(joint, result, runShowingProgress(found.forgives())), result.verdict);
  if (verify) reportVerification(runShowingProgress(verifyCheck(joint, result)));
  endWith(exitCodeOf(result));
}

function exitCodeOf({ verdict, meetsClearance }: CheckResult): ExitCode {
  if (verdict === 'undecided') return exitCodes.undecided;
  return meetsClearance ? exitCodes.meets : exitCodes.doesNotMeet;
}
