import { Command } from 'commander';
import { boreAnswer } from '../src/answers/bore.ts';
import { alignBore } from '../src/bore/bore-result.ts';
import { readBoreRequest, type TypedBore } from '../src/typed/bore-request.ts';
import { boreText } from '../src/words/bore-text.ts';
import { exitCodes } from './exit.ts';
import { ofFlags } from './of-flags.ts';
import { orFail } from './open-job.ts';
import { endWith, printJson, printVerdictFirst } from './terminal.ts';

const examples = `
The crank carries the dial round; look at the block's face, 12 o'clock up. Plus: the plunger is pressed in, the surface
stands nearer. Push the plunger with a finger: the hand must go to plus, else change all signs. Four places or more, by the
clock (12, 1.5 for half past 1) or as angles anticlockwise from 3 o'clock (45deg); the first again at the end tells
whether the dial held its zero. Lengths in mm, or with in behind them: 0.08, 0.003in.
Sag: clamp the rig to a stiff bar, zero above, turn it over: what the dial loses is --sag. Of a reading at angle a it
takes off sag × (1 − sin a) / 2: nothing at 12, half at 3 and 9, all at 6.
Exit code: 0 in line, however the readings err within --error, 1 out of line, 2 an input is wrong, 3 undecided.

Examples:
  fettle bore --bore 12:0,3:0.08,6:-0.05,9:0.08
  fettle bore --bore 12:0,3:0.06,6:0.31,9:0.25,12:0.01 --sag 0.02
  fettle bore --bore 0deg:0,60deg:0.05,120deg:0.06,180deg:0.02,240deg:-0.03,300deg:-0.04 --flange "SAE 3"
  fettle bore --bore 12:0,3:0.02,6:0.01,9:0 --face 12:0,3:0.05,6:0.1,9:0.05 --face-radius 150 --json`;

/** `fettle bore`: whether a gearbox bore is in line with the crank, by a dial that the crank carries round it. */
export function boreCommand(): Command {
  return new Command('bore')
    .description('Tells from the readings of a dial on the crank how far a bore is off, and which dowels put it right.')
    .requiredOption('--bore <readings>', 'the bore, a reading a place: 12:0,3:0.08,6:-0.05,9:0.08')
    .option('--face <readings>', 'the face about it, read the same way: plus where it stands out toward the dial')
    .option('--face-radius <length>', 'how far from the crank the plunger ran on the face')
    .option('--sag <length>', 'what the rig droops between above and below, as read on a stiff bar; of the bore alone')
    .option('--error <length>', 'how far a reading may err; default 0.01 mm, a graduation')
    .option('--limit <length>', 'run-out allowed, highest less lowest reading; default 0.127 mm (0.005 in)')
    .option('--flange <number>', 'an SAE housing flange, whose run-out is the limit of bore and face: "SAE 3"')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .addHelpText('after', examples)
    .action(bore);
}

interface Flags extends TypedBore {
  readonly json?: boolean;
}

function bore({ json = false, ...flags }: Flags): void {
  const result = alignBore(orFail(ofFlags(readBoreRequest(flags))));
  if (json) printJson(boreAnswer(result));
  else printVerdictFirst(boreText(result), colours[result.verdict]);
  endWith(codes[result.verdict]);
}

const colours = { good: 'goes', not: 'fouls', undecided: 'undecided' } as const;

const codes = {
  good: exitCodes.meets,
  not: exitCodes.doesNotMeet,
  undecided: exitCodes.undecided,
} as const;
