import { Command, CommanderError } from 'commander';
import { version } from '../package.json';
import type { Finding } from '../src/files/finding.ts';
import { findingsText } from '../src/words/finding-text.ts';
import { type CommandEntry, commands } from './commands.ts';
import { Exit, exitCodes } from './exit.ts';
import { WrongInput } from './report-findings.ts';
import { printJson, say } from './terminal.ts';

/** Runs one command line (without the program's own name) and gives its exit code; never throws, never shows a stack. */
export async function run(argv: readonly string[]): Promise<number> {
  try {
    const program = await programFor(argv);
    await program.parseAsync(argv, { from: 'user' });
    return exitCodes.meets;
  } catch (error) {
    return explain(error, argv.includes('--json'));
  }
}

/** The program with the commands named in `argv` in full, the others only by name. */
async function programFor(argv: readonly string[]): Promise<Command> {
  const program = new Command('fettle')
    .description(
      'Will two castings that were never made for each other go together, and what is the least metal to take off?',
    )
    .version(version)
    .exitOverride()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'fettle: ')) })
    .showHelpAfterError('fettle --help lists the commands; fettle check --help shows one of them.')
    .addHelpText('after', examples);
  for (const entry of commands) {
    const full = argv.slice(0, 2).includes(entry.name);
    const command = full ? await entry.load() : named(entry);
    program.addCommand(command.summary(entry.summary).copyInheritedSettings(program));
  }
  return program;
}

const named = ({ name }: CommandEntry): Command => new Command(name);

const examples = `
Examples:
  fettle demo
  fettle check profiles/marsh-carrier/transfer-case.fit.json
  fettle grind profiles/marsh-carrier/transfer-case.fit.json --json`;

function explain(error: unknown, json: boolean): number {
  if (error instanceof Exit) return error.code;
  if (error instanceof WrongInput) return refuse(error.findings, json);
  if (error instanceof CommanderError) return afterCommander(error, json);
  const what = error instanceof Error ? error.message : String(error);
  say(
    `fettle: this is a fault of Fettle itself, not of your files: ${oneLine(what)}. Please open an issue with this line, the command you gave and the files of the job.`,
  );
  return exitCodes.ourBug;
}

/** commander has already said what is wrong, or shown the help that was asked for. */
function afterCommander({ exitCode, message }: CommanderError, json: boolean): number {
  if (exitCode === 0) return exitCodes.meets;
  const found = oneLine(message.replace(/^error: /, ''));
  if (json) printFindings([{ file: '', at: 'command line', found, expected: 'a command as fettle --help shows it' }]);
  return exitCodes.inputWrong;
}

function refuse(findings: readonly Finding[], json: boolean): number {
  if (json) printFindings(findings);
  say(findingsText(findings));
  return exitCodes.inputWrong;
}

const printFindings = (findings: readonly Finding[]): void => printJson({ format: 'fettle-findings/1', findings });

const oneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').slice(0, 300);
