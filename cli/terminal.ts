import pc from 'picocolors';
import type { Verdict } from '../src/clearance/check-result.ts';
import { Exit, type ExitCode, exitCodes } from './exit.ts';

/** The answer itself, to standard output. */
export const print = (text: string): void => {
  process.stdout.write(`${harmless(text)}\n`);
};

/** Everything that is not the answer, to standard error. */
export const say = (text: string): void => {
  process.stderr.write(`${harmless(text)}\n`);
};

/** An answer as JSON, alone on standard output. */
export const printJson = (answer: unknown): void =>
  print(JSON.stringify(answer, null, 2).replaceAll(/[\x7f-\x9f]/g, escaped));

const escaped = (control: string): string => `\\u00${control.charCodeAt(0).toString(16)}`;

/** An answer in words, its first word in the colour of its verdict where the terminal shows colours. */
export function printVerdictFirst(text: string, verdict: Verdict): void {
  const [word = ''] = /^[A-Z][A-Z ]*[A-Z]/.exec(text) ?? [];
  process.stdout.write(`${inks.bold(inks[colours[verdict]](word))}${harmless(text.slice(word.length))}\n`);
}

/** Ends the command; 0 is left to come to its own end. */
export function endWith(code: ExitCode): void {
  if (code !== exitCodes.meets) throw new Exit(code);
}

const colours: Record<Verdict, 'green' | 'yellow' | 'red'> = {
  goes: 'green',
  'should-go': 'green',
  'too-close': 'yellow',
  undecided: 'yellow',
  fouls: 'red',
};

// a build server is no terminal: what is piped stays plain there too
const inks = pc.createColors(process.stdout.isTTY === true && pc.isColorSupported);

/** Text without the control characters a file's names could smuggle into the terminal; line ends stay. */
const harmless = (text: string): string => text.replaceAll(/[^\P{Cc}\n]/gu, '·');
