import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { WrongInput } from '../../../cli/report-findings.ts';
import { save } from '../../../cli/save.ts';
import { failingDisk } from '../../support/failing-disk.ts';
import { folderWith } from '../../support/temp-folder.ts';

describe('saving on a disk in trouble', () => {
  it.each([
    ['writeFileSync', 'ENOSPC', 'no room left on the disk'],
    ['fsyncSync', 'EIO', 'a write that failed (EIO)'],
    ['renameSync', 'EACCES', 'no leave to write in'],
    ['openSync', 'EROFS', 'no leave to write in'],
  ] as const)('%s failing with %s is said in words, and the old file stands alone and whole', (at, code, words) => {
    const folder = folderWith({ 'fit.svg': 'old' });
    let found = '';
    try {
      save(join(folder, 'fit.svg'), 'new', failingDisk(at, code));
    } catch (error) {
      found = error instanceof WrongInput ? (error.findings[0]?.found ?? '') : String(error);
    }
    expect(found).toContain(words);
    expect(readdirSync(folder)).toEqual(['fit.svg']);
    expect(readFileSync(join(folder, 'fit.svg'), 'utf8')).toBe('old');
  });
});
