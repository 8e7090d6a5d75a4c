import { Command } from 'commander';
import { stackAnswer } from '../src/answers/stack.ts';
import { readStack } from '../src/stack/read-stack.ts';
import { stackUp } from '../src/stack/stack-result.ts';
import { stackText } from '../src/words/stack-text.ts';
import { exitCodes } from './exit.ts';
import { loadText } from './load-text.ts';
import { orFail } from './open-job.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
The file holds lengths along the crank, each with its ± limit; a length that is left out is named, with how to measure it.
Exit code: 0 all of it holds at worst, 1 something does not even at best, 2 an input is wrong, 3 undecided, or a length
is missing.

Examples:
  fettle stack profiles/marsh-carrier/transfer-case.stack.json
  fettle stack profiles/marsh-carrier/transfer-case.stack.json --json`;

/** `fettle stack FILE`: whether shaft, clutch and release gear come together along the crank. */
export function stackCommand(): Command {
  return new Command('stack')
    .description('Adds up the lengths along the crank: pilot, spline, release bearing, and the tip against the crank.')
    .argument('<file>', 'the lengths, *.stack.json')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(stack);
}

function stack(file: string, { json = false }: { readonly json?: boolean }): void {
  const result = stackUp(orFail(readStack(file, orFail(loadText(file)))));
  if (json) printJson(stackAnswer(result));
  else printVerdictFirst(stackText(result), colours[result.verdict]);
  endWith(codes[result.verdict]);
}

const colours = { goes: 'goes', not: 'fouls', undecided: 'undecided' } as const;

const codes = {
  goes: exitCodes.meets,
  not: exitCodes.doesNotMeet,
  undecided: exitCodes.undecided,
} as const;
