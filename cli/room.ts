import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Command } from 'commander';
import { roomAnswer } from '../src/answers/room.ts';
import { partEnding } from '../src/files/file-endings.ts';
import { fileText } from '../src/files/file-text.ts';
import { shown } from '../src/files/shown.ts';
import { type RoomResult, roomOnCrank } from '../src/room/room-on-crank.ts';
import { roomPart, roomPartName } from '../src/room/room-part.ts';
import { roomText } from '../src/words/room-text.ts';
import { exitCodes } from './exit.ts';
import { loadText } from './load-text.ts';
import { type OpenedJob, openJob } from './open-job.ts';
import { runShowingProgress } from './progress.ts';
import { failWith } from './report-findings.ts';
import { save } from './save.ts';
import { endWith, printJson, printVerdictFirst, say } from './terminal.ts';

const examples = `
Depths are from the fixed part's mating face; the clearance kept is the fit's "clearance": { "rotating" }.
Exit code: 0 the room is told, 2 an input is wrong, 3 undecided.

Examples:
  fettle room profiles/marsh-carrier/transfer-case.fit.json
  fettle room profiles/sae-3-adapter/adapter.fit.json -o room.part.json`;

/** `fettle room FIT`: how large a body turning about the crank may be, by depth. */
export function roomCommand(): Command {
  return new Command('room')
    .description(
      'The largest body turning about the crank that clears both castings: what flywheel and clutch may be bought.',
    )
    .argument('<fit>', 'the fit file, *.fit.json')
    .option('--json', 'print the answer as JSON, alone on standard output')
    .option('-o, --output <part>', 'write that body as a rotating part, every error against it, *.part.json')
    .addHelpText('after', examples)
    .action(room);
}

interface RoomFlags {
  readonly json?: boolean;
  readonly output?: string;
}

function room(fitFile: string, { json = false, output }: RoomFlags): void {
  const job = openJob(fitFile);
  if (output !== undefined) refuseOthers(output, job);
  const result = runShowingProgress(roomOnCrank(job.joint));
  if (json) printJson(roomAnswer(job.joint, result));
  else printVerdictFirst(roomText(job.joint, result), result.reason === null ? 'goes' : 'undecided');
  if (output !== undefined && result.reason === null) writePart(output, job, result);
  endWith(result.reason === null ? exitCodes.meets : exitCodes.undecided);
}

/** Only a part of our own making is written over. */
function refuseOthers(output: string, { files }: OpenedJob): void {
  const refuse = (found: string, expected: string): never => failWith([{ file: output, at: '', found, expected }]);
  if (!output.endsWith(partEnding)) refuse(shown(output), `a name that ends in ${partEnding}; nothing was written`);
  if (files.some(({ file }) => resolve(file) === resolve(output)))
    refuse('a file of the job', 'another file to write; nothing was written');
  if (existsSync(output) && !isOurs(output))
    refuse('a file that is no room of Fettle', 'such a file to replace, or no file of that name; nothing was written');
}

function isOurs(file: string): boolean {
  const text = loadText(file);
  return text.ok && text.value.includes(`"name": "${roomPartName}"`);
}

function writePart(output: string, { joint }: OpenedJob, { worstRanges }: RoomResult): void {
  const part = roomPart(worstRanges, joint.fit.units);
  if (part === null) {
    say(`${output} was not written: at worst there is no room that has an end.`);
    return;
  }
  save(output, fileText(part));
  say(`The room at worst is written to ${output}. Where nothing limits it, nothing is in the file.`);
}
