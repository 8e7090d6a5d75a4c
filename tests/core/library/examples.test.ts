import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as jobs from '../../../src/library.ts';
import * as library from '../../../src/motion-library.ts';
import { printedBy, saidToPrint, tsBlocks } from '../../support/examples.ts';
import { expectReadmePrinted, readmeProgram } from '../../support/library-program.ts';

const house = resolve(import.meta.dirname, '../../..');
const folder = 'src/geometry/library';
const blocksOf = (files: readonly string[]) =>
  files.flatMap((file) => tsBlocks(file).map((block) => [file, block] as const));
const ofMotion = blocksOf(readdirSync(join(house, folder)).map((file) => join(folder, file)));
const jobEntry = readFileSync(join(house, 'src/library.ts'), 'utf8');
const ofJobs = blocksOf([...jobEntry.matchAll(/^export \{.* from '\.\/(.*)';$/gm)].map(([, file]) => `src/${file}`));
const examples = [...ofMotion, ...ofJobs];

describe('the examples in the comments of the library', () => {
  it('every function of the motion kernel has one', () => {
    const functions = Object.keys(library).filter((name) => name !== 'OutlineError');
    const shown = (name: string): boolean => ofMotion.some(([, block]) => block.includes(`${name}(`));
    expect(functions.filter((name) => !shown(name))).toEqual([]);
    expect(ofMotion).toHaveLength(functions.length);
  });

  it('every function of jobs has one', () => {
    const shown = (name: string): boolean => ofJobs.some(([, block]) => block.includes(`${name}(`));
    expect(Object.keys(jobs).filter((name) => !shown(name))).toEqual([]);
    expect(ofJobs).toHaveLength(Object.keys(jobs).length);
  });

  it.each(examples)('%s prints what it says', async (_, block) => {
    expect(saidToPrint(block)).not.toEqual([]);
    expect(await printedBy(block)).toEqual(saidToPrint(block));
  });
});

it('the program in the README proves what the closed form says', async () => {
  expectReadmePrinted(await printedBy(readmeProgram()));
});
