import { existsSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { WrongInput } from '../../../cli/report-findings.ts';
import { save } from '../../../cli/save.ts';
import { folderWith } from '../../support/temp-folder.ts';

const findingOf = (act: () => void) => {
  try {
    act();
  } catch (error) {
    if (error instanceof WrongInput) return error.findings[0];
    throw error;
  }
  return undefined;
};

describe('saving a file', () => {
  it('writes it whole and leaves nothing beside it', () => {
    const folder = folderWith();
    save(join(folder, 'fit.svg'), '<svg/>');
    expect(readdirSync(folder)).toEqual(['fit.svg']);
    expect(readFileSync(join(folder, 'fit.svg'), 'utf8')).toBe('<svg/>');
  });

  it('takes the place of a file that stood there', () => {
    const folder = folderWith({ 'fit.svg': 'the old one, and longer' });
    save(join(folder, 'fit.svg'), 'new');
    expect(readFileSync(join(folder, 'fit.svg'), 'utf8')).toBe('new');
  });

  it('writes through a link, and leaves the link', () => {
    const folder = folderWith({ 'true.svg': 'old' });
    symlinkSync('true.svg', join(folder, 'link.svg'));
    save(join(folder, 'link.svg'), 'new');
    expect(readFileSync(join(folder, 'true.svg'), 'utf8')).toBe('new');
    expect(readdirSync(folder).sort()).toEqual(['link.svg', 'true.svg']);
  });

  it('will not write over a folder', () => {
    const folder = folderWith({ 'fit.svg/inside.txt': 'kept' });
    const file = join(folder, 'fit.svg');
    expect(findingOf(() => save(file, 'x'))).toMatchObject({ file, found: 'a folder' });
    expect(readFileSync(join(file, 'inside.txt'), 'utf8')).toBe('kept');
    expect(readdirSync(folder)).toEqual(['fit.svg']);
  });

  it('says that the folder is missing', () => {
    const file = join(folderWith(), 'no/such/fit.svg');
    expect(findingOf(() => save(file, 'x'))?.found).toContain('no folder');
    expect(existsSync(file)).toBe(false);
  });

  it('will not write to a device', () => {
    expect(findingOf(() => save('/dev/null', 'x'))?.found).toBe('a device or pipe');
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });

  it('says that a name is too long', () => {
    const file = join(folderWith(), `${'x'.repeat(300)}.svg`);
    expect(findingOf(() => save(file, 'x'))?.found).toBe('a name too long for the disk');
  });
});
