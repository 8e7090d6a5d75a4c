import { Command } from 'commander';
import { holeAnswer } from '../src/answers/hole.ts';
import { holeFor } from '../src/holes/hole-result.ts';
import { readHoleRequest, type TypedHole } from '../src/typed/hole-request.ts';
import { holeText } from '../src/words/hole-text.ts';
import { exitCodes } from './exit.ts';
import { ofFlags } from './of-flags.ts';
import { orFail } from './open-job.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
Lengths in mm, or with in behind them: 20, 0.75in. Drills in mm or by their inch names: 10.2, #7, F, 27/64.
Exit code: 0 it can be done so, 1 something stands against it (wall, depth or drill), 2 an input is wrong.

Examples:
  fettle hole M12x1.25 --material grey-iron
  fettle hole M12x1.25 --was M11x1.25 --boss 20 --depth 30
  fettle hole M10x1.25 --engagement 20 --have 8.5,8.7,9
  fettle hole 3/8-16 --material aluminium --json`;

/** `fettle hole THREAD`: what to drill, how deep, and what it leaves of the metal and of the thread that was there. */
export function holeCommand(): Command {
  return new Command('hole')
    .description('Works out a tapped hole: drill, percent of thread, depth, wall, and what is left of an old thread.')
    .argument('<thread>', 'the thread wanted: M12x1.25, M12, 3/8-16, "3/8 UNF", #10-24, G1/4, Rc1/4')
    .option('--was <thread>', 'the thread that is there already, to be made larger')
    .option('--material <name>', 'grey-iron, ductile-iron, aluminium or steel: how long the thread should engage')
    .option('--engagement <length>', 'how long the thread is to engage; default as the material advises')
    .option('--boss <diameter>', 'the boss about the hole')
    .option('--wall <length>', 'metal beside the thread as it is now')
    .option('--keep <length>', 'wall to keep beside the thread; default a third of its diameter')
    .option('--depth <length>', 'how deep it is drilled, or may be, to the shoulder')
    .option('--have <drills>', 'the drills in the box, parted by commas')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(hole);
}

interface Flags extends Omit<TypedHole, 'thread'> {
  readonly json?: boolean;
}

function hole(thread: string, { json = false, ...flags }: Flags): void {
  const result = holeFor(orFail(ofFlags(readHoleRequest({ thread, ...flags }), ['thread'])));
  const does = result.against.length === 0;
  if (json) printJson(holeAnswer(result));
  else printVerdictFirst(holeText(result), does ? 'goes' : 'too-close');
  endWith(does ? exitCodes.meets : exitCodes.doesNotMeet);
}
