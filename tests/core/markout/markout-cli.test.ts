import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { foreignFiles } from '../../../cli/own-kind.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const profiles = resolve(import.meta.dirname, '../../../profiles');
const starter = join(profiles, 'starter-boss/starter.fit.json');
const carrier = join(profiles, 'marsh-carrier/transfer-case.fit.json');
const adapter = join(profiles, 'sae-3-adapter/adapter.fit.json');

describe('fettle markout', () => {
  it('writes the table and every gauge in each form, and says what each is for', async () => {
    const folder = join(folderWith(), 'new', 'marks');
    const { code, stdout, stderr } = await runCli('markout', starter, '-o', folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(readdirSync(folder).sort()).toEqual([
      'all-sheets.pdf',
      'marking-out.csv',
      'marking-out.dxf',
      'marking-out.pdf',
      'milling.csv',
      'milling.dxf',
      'milling.pdf',
      'profile-gauge-1-boss-1.svg',
      'profile-gauge-1-boss-2.svg',
      'profile-gauge-1-boss.dxf',
      'profile-gauge-1-boss.pdf',
      'side-strips.pdf',
      'side-strips.svg',
    ]);
    for (const name of ['marking-out', 'profile-gauge-1-boss', 'side-strips']) expect(stdout).toContain(`- ${name}: `);
    expect(stdout).toContain('No face template: ');
    expect(stdout).toContain('No swing gauge: nothing turns on the way in.');
    expect(stdout).toContain('no fit to page');
  });

  it('ends with the code of the plan: one that does not hold is written all the same, and says so', async () => {
    const folder = folderWith();
    const { code, stdout } = await runCli('markout', carrier, '-o', folder, '--paper', 'A3');
    expect(code).toBe(1);
    expect(stdout).toContain('THE PLAN DOES NOT HOLD');
    expect(stdout).toContain('PDF for A3');
    expect(existsSync(join(folder, 'swing-gauge.dxf'))).toBe(true);
  });

  it('replaces what it wrote before, byte for byte the same', async () => {
    const folder = folderWith();
    const all = () => readdirSync(folder).map((name) => readFileSync(join(folder, name), 'base64'));
    await runCli('markout', starter, '-o', folder);
    const first = all();
    expect((await runCli('markout', starter, '-o', folder)).code).toBe(0);
    expect(all()).toEqual(first);
  });

  it('marks mirrored files as such', async () => {
    const folder = folderWith();
    await runCli('markout', starter, '-o', folder, '--mirror');
    expect(readdirSync(folder).every((name) => name.includes('-mirrored'))).toBe(true);
  });

  it('writes nothing where there is nothing to cut', async () => {
    const folder = join(folderWith(), 'none');
    const { code, stdout } = await runCli('markout', adapter, '-o', folder);
    expect(code).toBe(0);
    expect(stdout).toContain('nothing to mark out');
    expect(existsSync(folder)).toBe(false);
  });
});

describe('fettle markout refuses', () => {
  it('a file where a folder is to be', async () => {
    const folder = folderWith({ marks: 'mine' });
    const { code, stderr } = await runCli('markout', starter, '-o', join(folder, 'marks'));
    expect(code).toBe(2);
    expect(stderr).toContain('found a file; expected a folder');
    expect(readFileSync(join(folder, 'marks'), 'utf8')).toBe('mine');
  });

  it('to replace a file that is something else, and then writes nothing', async () => {
    const folder = folderWith({ 'side-strips.svg': '<html></html>' });
    const { code, stderr } = await runCli('markout', starter, '-o', folder);
    expect(code).toBe(2);
    expect(stderr).toContain('found a file that is not an SVG drawing');
    expect(readdirSync(folder)).toEqual(['side-strips.svg']);
    expect(readFileSync(join(folder, 'side-strips.svg'), 'utf8')).toBe('<html></html>');
  });

  it.each([
    ['a.csv', 'name,phone\nme,1', 'place,section,edge\n'],
    ['a.dxf', 'notes of mine', '  0\r\nSECTION\r\n'],
    ['a.pdf', 'not a pdf', '%PDF-1.4\n'],
    ['a.svg', '<html></html>', '<?xml version="1.0"?>\n<!-- mine -->\n<svg xmlns="">'],
  ])('for %s only what is no such file', (name, other, own) => {
    expect(foreignFiles([join(folderWith({ [name]: other }), name)]).length).toBe(1);
    expect(foreignFiles([join(folderWith({ [name]: own }), name)])).toEqual([]);
    expect(foreignFiles([join(folderWith(), name)])).toEqual([]);
  });

  it('a folder where a file is to be', () => {
    const folder = folderWith();
    mkdirSync(join(folder, 'marking-out.pdf'));
    expect(foreignFiles([join(folder, 'marking-out.pdf')])[0]?.found).toBe('something that is no file');
  });

  it('a place where no folder can be made', async () => {
    const folder = folderWith();
    writeFileSync(join(folder, 'file'), '');
    const { code, stderr } = await runCli('markout', starter, '-o', join(folder, 'file', 'marks'));
    expect(code).toBe(2);
    expect(stderr).toContain('expected a folder');
  });

  it.each([
    ['--paper', 'a5', 'expected a4, a3, letter'],
    ['--bars', '150', 'expected two lengths in mm'],
    ['--bars', '149,2,150,4', 'expected two lengths in mm'],
    ['--bars', '15,15', 'expected two lengths in mm'],
    ['--bars', '5.9,5.9', 'expected two lengths in mm'],
  ])('%s %s', async (flag, value, expected) => {
    const folder = folderWith();
    const { code, stderr } = await runCli('markout', starter, '-o', folder, flag, value);
    expect(code).toBe(2);
    expect(stderr).toContain(expected);
    expect(readdirSync(folder)).toEqual([]);
  });
});
