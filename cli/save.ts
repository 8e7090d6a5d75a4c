import { closeSync, fsyncSync, openSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { failWith, WrongInput } from './report-findings.ts';

/**
 * Writes a file whole or not at all: into a new file beside it, forced to disk, then renamed over it. Never leaves
 * a half-written file, nor harms the one that stood there. Ends the command with a finding where it cannot.
 */
export function save(file: string, content: string | Uint8Array): void {
  const beside = join(dirname(file), `.fettle-${process.pid}.part`);
  try {
    const target = replaceable(file);
    writeToDisk(beside, content);
    renameSync(beside, target);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error instanceof WrongInput ? error : new WrongInput([{ file, at: '', ...whyUnwritable(error, file) }]);
  }
}

/** The file a link leads to, or the file itself; only plain files are replaced. */
function replaceable(file: string): string {
  const standing = statSync(file, { throwIfNoEntry: false });
  if (standing === undefined) return file;
  if (standing.isFile()) return realpathSync(file);
  const found = standing.isDirectory() ? 'a folder' : 'a device or pipe';
  return failWith([{ file, at: '', found, expected: 'the name of a file to write' }]);
}

function writeToDisk(file: string, content: string | Uint8Array): void {
  // wx: a file of that name is not ours to overwrite, nor a link to follow
  const handle = openSync(file, 'wx');
  try {
    writeFileSync(handle, content);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function whyUnwritable(error: unknown, file: string): { found: string; expected: string } {
  const folder = dirname(file);
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown trouble';
  const expected = 'a place that can be written; nothing was changed';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { found: `no folder ${folder}`, expected: 'a folder that exists; nothing was changed' };
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return { found: `no leave to write in ${folder}`, expected };
    case 'ENOSPC':
    case 'EDQUOT':
      return { found: 'no room left on the disk', expected: 'room for the file; nothing was changed' };
    case 'ENAMETOOLONG':
      return { found: 'a name too long for the disk', expected };
    default:
      return { found: `a write that failed (${code})`, expected };
  }
}
