import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as library from '../../../src/motion-library.ts';
import { printedBy, saidToPrint, tsBlocks } from '../../support/examples.ts';
import { expectReadmePrinted, readmeProgram } from '../../support/library-program.ts';

const folder = 'src/geometry/library';
const files = readdirSync(resolve(import.meta.dirname, '../../..', folder)).map((file) => join(folder, file));
const ofMotion = files.flatMap((file) => tsBlocks(file).map((block) => [file, block] as const));
const analysis = 'src/pipeline/analysis.ts';
const examples = [...ofMotion, ...tsBlocks(analysis).map((block) => [analysis, block] as const)];

describe('the examples in the comments of the library', () => {
  it('every function of the motion kernel has one', () => {
    const functions = Object.keys(library).filter((name) => name !== 'OutlineError');
    const shown = (name: string): boolean => ofMotion.some(([, block]) => block.includes(`${name}(`));
    expect(functions.filter((name) => !shown(name))).toEqual([]);
    expect(ofMotion).toHaveLength(functions.length);
  });

  it.each(examples)('%s prints what it says', async (_, block) => {
    expect(saidToPrint(block)).not.toEqual([]);
    expect(await printedBy(block)).toEqual(saidToPrint(block));
  });
});

it('the program in the README proves what the closed form says', async () => {
  expectReadmePrinted(await printedBy(readmeProgram()));
});
