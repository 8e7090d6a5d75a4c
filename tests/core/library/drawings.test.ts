import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { analyse, drain, drawingSvg, type MarkoutOptions, markoutFiles, readJob } from '../../../src/library.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const house = resolve(import.meta.dirname, '../../..');

function analysisOf(demo: string) {
  const read = readJob(`profiles/${demo}.fit.json`, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
  const found = read.ok ? analyse(read.value) : read;
  if (!found.ok) throw new Error(JSON.stringify(found.findings));
  return found.value;
}

const starter = 'starter-boss/starter';

const sheetsOf = (demo: string, options?: MarkoutOptions) => {
  const { joint, plan, tables } = analysisOf(demo);
  return markoutFiles(joint, drain(plan()), drain(tables()), options);
};

describe('what the library draws', () => {
  it('is byte for byte what fettle draw writes', async () => {
    const file = join(folderWith(), 'starter.svg');
    await runCli('draw', `profiles/${starter}.fit.json`, '-o', file);
    const { joint, check, plan, alternatives, room } = analysisOf(starter);
    const results = { check: drain(check()), plan: drain(plan()), alternatives: drain(alternatives()) };
    expect(drawingSvg({ joint, ...results, room: drain(room()) })).toBe(readFileSync(file, 'utf8'));
  });

  it.each<[string, readonly string[], MarkoutOptions]>([
    ['as it comes', [], {}],
    [
      'on other paper, for a printer that is out, mirrored',
      ['--paper', 'letter', '--bars', '149.2,150.4', '--mirror'],
      { paper: 'letter', bars: { xMm: 149.2, yMm: 150.4 }, mirrored: true },
    ],
  ])('is file for file and byte for byte what fettle markout writes, %s', async (_, flags, options) => {
    const folder = folderWith();
    const { stdout } = await runCli('markout', `profiles/${starter}.fit.json`, '-o', folder, ...flags);
    const { files, notMade } = await sheetsOf(starter, options);
    expect(files.map(({ name }) => name).sort()).toEqual(readdirSync(folder).sort());
    for (const { name, content } of files) {
      expect(Buffer.compare(readFileSync(join(folder, name)), Buffer.from(content)), name).toBe(0);
    }
    expect(notMade).toHaveLength(options.mirrored === true ? 3 : 2);
    for (const words of notMade) expect(stdout.replaceAll(/\s+/g, ' ')).toContain(words);
  });

  it('is nothing to mark out by where nothing is cut', async () => {
    expect(await sheetsOf('sae-3-adapter/adapter')).toEqual({ files: [], notMade: [] });
  });

  it.each<[string, unknown, string]>([
    ['a paper that is not known', { paper: 'a5' }, 'paper: found "a5", expected a4, a3, letter'],
    ['bars that no printer makes', { bars: { xMm: 150, yMm: 0 } }, 'bars: found [150, 0], expected two lengths in mm'],
    ['bars that are no numbers', { bars: { xMm: Number.NaN, yMm: 150 } }, 'bars: found [NaN, 150]'],
  ])('is refused for %s', async (_, options, said) => {
    const refused = await sheetsOf('sae-3-adapter/adapter', options as MarkoutOptions).catch((error) => error);
    expect(refused).toBeInstanceOf(RangeError);
    expect(refused.message).toContain(said);
  });
});

it('a program that imports the library loads nothing that writes PDFs', () => {
  const libraries = new Set<string>();
  const seen = new Set<string>();
  const follow = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    // imports and exports of more than types; those in braces that are asked for at run time are not at a line's start
    const named = readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?!type\b)[^;'=]*?from '([^']+)';$/gm);
    for (const [, from = ''] of named) {
      if (from.startsWith('.')) follow(resolve(dirname(file), from));
      else libraries.add(from);
    }
  };
  follow(join(house, 'src/library.ts'));
  expect(seen.size).toBeGreaterThan(100);
  expect([...libraries]).toContain('zod');
  expect([...libraries]).not.toContain('pdf-lib');
});
