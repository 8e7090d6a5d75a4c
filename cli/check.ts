import { Command } from 'commander';
import { checkJoint } from '../src/clearance/check.ts';
import { checkFacts } from '../src/clearance/check-facts.ts';
import type { CheckAnswer } from '../src/model/check-answer.ts';
import { checkText } from '../src/words/check-text.ts';
import { type ExitCode, exitCodes } from './exit.ts';
import { openJob } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

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
    .addHelpText('after', examples)
    .action(check);
}

async function check(fitFile: string, { json = false }: { json?: boolean }): Promise<void> {
  const joint = openJob(fitFile);
  const { answer } = await runShowingProgress(checkJoint(joint));
  if (json) printJson(answer);
  else printVerdictFirst(checkText(joint, answer, checkFacts(joint, answer)), answer.verdict);
  endWith(exitCodeOf(answer));
}

function exitCodeOf({ verdict, meetsClearance }: CheckAnswer): ExitCode {
  if (verdict === 'undecided') return exitCodes.undecided;
  return meetsClearance ? exitCodes.meets : exitCodes.doesNotMeet;
}
