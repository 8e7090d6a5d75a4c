import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { vi } from 'vitest';
import { folderWith } from './temp-folder.ts';

const house = resolve(import.meta.dirname, '../..');

/** The library's entries, by the name they are imported by. */
const entries = { 'fettle/motion': 'src/motion-library.ts', fettle: 'src/library.ts' } as const;

/** The TypeScript blocks of a Markdown text, or of the comments in a source. */
export function tsBlocks(file: string): readonly string[] {
  const text = readFileSync(join(house, file), 'utf8').replace(/^ \* ?/gm, '');
  return [...text.matchAll(/^```ts\n(.*?)^```$/gms)].map(([, block]) => block ?? '');
}

/** What each `console.log(…); // …` of a program says it prints. */
export const saidToPrint = (program: string): readonly string[] =>
  [...program.matchAll(/^console\.log\(.*\); \/\/ (.*)$/gm)].map(([, said]) => said ?? '');

/** Runs a program that imports the library, as it stands in this checkout; what it prints, line by line. */
export async function printedBy(program: string): Promise<readonly string[]> {
  const bound = Object.entries(entries).reduce(
    (text, [name, file]) => text.replaceAll(`from '${name}'`, `from '${join(house, file)}'`),
    program,
  );
  const printed: string[] = [];
  const log = vi.spyOn(console, 'log').mockImplementation((...said) => void printed.push(said.join(' ')));
  try {
    await import(join(folderWith({ 'program.ts': bound }), 'program.ts'));
  } finally {
    log.mockRestore();
  }
  return printed;
}
