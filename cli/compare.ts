import { Command } from 'commander';
import { compareAnswer } from '../src/answers/compare.ts';
import { type CompareResult, compareCastings } from '../src/compare/compare-castings.ts';
import { layTogether, type NamePair } from '../src/compare/lay-together.ts';
import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import type { Casting } from '../src/job/casting.ts';
import { readPart } from '../src/job/read-part.ts';
import { compareText } from '../src/words/compare-text.ts';
import { exitCodes } from './exit.ts';
import { loadText } from './load-text.ts';
import { orFail } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
Both parts show one face, from whichever side, with two dowels or more of the same names.
Exit code: 0 nothing stands on B beyond A by more than both tracings may err, 1 something does, 2 an input is wrong,
3 undecided: the two do not register, or where nothing was found not all was traced.

Examples:
  fettle compare profiles/marsh-carrier/block.part.json profiles/marsh-carrier/block.part.json
  fettle compare profiles/marsh-carrier/block.part.json profiles/marsh-carrier/block.part.json --dowels D1=D1,D2=D2 --json`;

/** `fettle compare A B`: what stands on the second of two castings of one face beyond the first. */
export function compareCommand(): Command {
  return new Command('compare')
    .description(
      'Lays two castings of the same face on their dowels: what has B that A has not, and how well they agree?',
    )
    .argument('<A>', 'the part file of the casting that is known, *.part.json')
    .argument('<B>', 'the part file of the other one, *.part.json')
    .option('--dowels <pairs>', 'holes of A and B that are one: D1=P1,D2=P2; default: dowels named alike')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(compare);
}

interface CompareFlags {
  readonly dowels?: string;
  readonly json?: boolean;
}

function compare(fileA: string, fileB: string, { dowels, json = false }: CompareFlags): void {
  const named = dowels === undefined ? null : pairsIn(fileA, dowels);
  const [first, second] = [readSeen(fileA), readSeen(fileB)];
  if (!first.ok || !second.ok) failWith([first, second].flatMap((part) => (part.ok ? [] : part.findings)));
  const joint = orFail(layTogether(first.value, second.value, named));
  const result = runShowingProgress(compareCastings(joint));
  if (json) printJson(compareAnswer(joint, result));
  else printVerdictFirst(compareText(joint, result), verdictOf(result));
  endWith(codes[verdictOf(result)]);
}

/** Both are seen looking at the one face they share. */
function readSeen(file: string): Reading<Casting> {
  const text = loadText(file);
  return text.ok ? readPart(file, text.value, 'fixed') : text;
}

const codes = {
  goes: exitCodes.meets,
  'too-close': exitCodes.doesNotMeet,
  undecided: exitCodes.undecided,
} as const;

const verdictOf = ({ settled, beyond }: CompareResult): keyof typeof codes =>
  settled ? (beyond.length > 0 ? 'too-close' : 'goes') : 'undecided';

function pairsIn(file: string, text: string): NamePair[] {
  const pairs = text.split(',').map((pair) => pair.split('=').map((name) => name.trim()));
  const wrong = pairs.filter(([a, b, more]) => !a || !b || more !== undefined);
  if (wrong.length > 0) {
    const finding: Finding = { file, at: '--dowels', found: shown(text), expected: 'pairs of names: D1=P1,D2=P2' };
    return failWith([finding]);
  }
  return pairs.map(([a = '', b = '']): NamePair => [a, b]);
}
