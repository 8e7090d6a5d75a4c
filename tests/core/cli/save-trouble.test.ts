import * as fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { WrongInput } from '../../../cli/report-findings.ts';
import { save } from '../../../cli/save.ts';
import { folderWith } from '../../support/temp-folder.ts';

const trouble = vi.hoisted(() => ({ at: '', code: '' }));

/** The real disk, but for one call that fails as a full or failing disk would. */
vi.mock('node:fs', async (importOriginal) => {
  const real = await importOriginal<typeof import('node:fs')>();
  const failing = <K extends 'writeFileSync' | 'fsyncSync' | 'renameSync' | 'openSync'>(name: K): (typeof real)[K] =>
    ((...args: Parameters<(typeof real)[K]>) => {
      if (trouble.at === name) throw Object.assign(new Error(`${trouble.code}: made to fail`), { code: trouble.code });
      return (real[name] as (...all: unknown[]) => unknown)(...args);
    }) as (typeof real)[K];
  return {
    ...real,
    writeFileSync: failing('writeFileSync'),
    fsyncSync: failing('fsyncSync'),
    renameSync: failing('renameSync'),
    openSync: failing('openSync'),
  };
});

afterEach(() => {
  trouble.at = '';
});

describe('saving on a disk in trouble', () => {
  it.each([
    ['writeFileSync', 'ENOSPC', 'no room left on the disk'],
    ['fsyncSync', 'EIO', 'a write that failed (EIO)'],
    ['renameSync', 'EACCES', 'no leave to write in'],
    ['openSync', 'EROFS', 'no leave to write in'],
  ])('%s failing with %s is said in words, and the old file stands alone and whole', (at, code, words) => {
    const folder = folderWith({ 'fit.svg': 'old' });
    Object.assign(trouble, { at, code });
    let found = '';
    try {
      save(join(folder, 'fit.svg'), 'new');
    } catch (error) {
      found = error instanceof WrongInput ? (error.findings[0]?.found ?? '') : String(error);
    }
    trouble.at = '';
    expect(found).toContain(words);
    expect(fs.readdirSync(folder)).toEqual(['fit.svg']);
    expect(fs.readFileSync(join(folder, 'fit.svg'), 'utf8')).toBe('old');
  });
});
