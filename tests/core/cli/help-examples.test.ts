import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const house = resolve(import.meta.dirname, '../../..');

/** The arguments of each `fettle …` line of a text, without what the shell adds. */
const examplesIn = (text: string, prompt: RegExp): string[][] =>
  text
    .split('\n')
    .filter((line) => prompt.test(line))
    .map((line) => line.replace(prompt, '').split(/ (?:>|&&|\|) /)[0] ?? '')
    .map((line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? ''));

/** Runs an example with profiles read from the house and outputs written to a folder of the test's own. */
function tried(argv: readonly string[]) {
  const folder = folderWith();
  const placed = argv.map((word, i) => {
    if (word.startsWith('profiles/')) return join(house, word);
    return argv[i - 1] === '-o' ? join(folder, word.replaceAll('/', '_')) : word;
  });
  return runCli(...placed);
}

/** An example that stands in two places, with nothing but its output named otherwise, is run once. */
const runs = new Map<string, ReturnType<typeof tried>>();
function triedOnce(argv: readonly string[]): ReturnType<typeof tried> {
  const key = argv.filter((_, i) => argv[i - 1] !== '-o').join('\n');
  const run = runs.get(key) ?? tried(argv);
  runs.set(key, run);
  return run;
}

const readsProfiles = (argv: readonly string[]): boolean => argv.some((word) => word.startsWith('profiles/'));

/** The trial fits of the demo settle how its outlines lie one way only, which is an answer too. */
const answered = ([name]: readonly string[]): number[] => (name === 'trial' ? [0, 1, 3] : [0, 1]);

describe('examples to copy', () => {
  it.each([
    'check',
    'grind',
    'ways',
    'room',
    'compare',
    'draw',
    'markout',
    'report',
    'trial',
    'match',
    'drill',
    'stack',
    'import',
  ])('those of %s work as they are printed', async (name) => {
    const examples = examplesIn((await runCli(name, '--help')).stdout, /^ {2}fettle /);
    expect(examples.length).toBeGreaterThan(0);
    for (const argv of examples) {
      const { code, stderr } = await triedOnce(argv);
      // a drawing of the reader's own is not here, which must be all that is wrong
      if (readsProfiles(argv)) expect(answered(argv), argv.join(' ')).toContain(code);
      else
        expect({ code, stderr }).toEqual({
          code: 2,
          stderr: expect.stringMatching(/^\S+: found no such file; .*\n1 thing/),
        });
    }
  });

  it('those of the README work as they are printed', async () => {
    const examples = examplesIn(readFileSync(join(house, 'README.md'), 'utf8'), /^npx --no fettle /).filter(
      readsProfiles,
    );
    expect(examples.map(([name]) => name)).toEqual([
      'check',
      'grind',
      'grind',
      'ways',
      'room',
      'compare',
      'draw',
      'markout',
      'report',
      'trial',
      'match',
      'drill',
      'stack',
      'drill',
      'stack',
    ]);
    for (const argv of examples) expect(answered(argv), argv.join(' ')).toContain((await triedOnce(argv)).code);
  });
});
