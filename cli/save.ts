import * as fs from 'node:fs';
import { dirname, join } from 'node:path';
import { holdingSignals } from './hold-signals.ts';
import { failWith, WrongInput } from './report-findings.ts';

/** The calls by which a file comes onto the disk, each of which may fail. */
export type Disk = Pick<typeof fs, 'openSync' | 'writeFileSync' | 'fsyncSync' | 'closeSync' | 'renameSync'>;

/**
 * Writes a file whole or not at all: into a new file beside it, forced to disk, then renamed over it. Never leaves
 * a half-written file, nor harms the one that stood there. Ends the command with a finding where it cannot.
 */
export function save(file: string, content: string | Uint8Array, disk: Disk = fs): void {
  try {
    replaceFile(replaceable(file), content, disk);
  } catch (error) {
    throw error instanceof WrongInput ? error : new WrongInput([{ file, at: '', ...whyUnwritable(error, file) }]);
  }
}

/**
 * As `save`, but throws what the system says, follows no link, and gives a new file the permissions `mode`; one that
 * stood there passes on its own. A signal to end is heard once it is done.
 */
export function replaceFile(file: string, content: string | Uint8Array, disk: Disk = fs, mode = 0o666): void {
  const beside = join(dirname(file), `.fettle-${process.pid}.part`);
  const standing = fs.lstatSync(file, { throwIfNoEntry: false });
  holdingSignals(() => {
    try {
      writeToDisk(beside, content, disk, standing?.isFile() ? standing.mode & 0o777 : mode);
      disk.renameSync(beside, file);
    } catch (error) {
      fs.rmSync(beside, { force: true });
      throw error;
    }
  });
}

/** The file a link leads to, or the file itself; only plain files are replaced. */
function replaceable(file: string): string {
  const standing = fs.statSync(file, { throwIfNoEntry: false });
  if (standing === undefined) return file;
  if (standing.isFile()) return fs.realpathSync(file);
  const found = standing.isDirectory() ? 'a folder' : 'a device or pipe';
  return failWith([{ file, at: '', found, expected: 'the name of a file to write' }]);
}

function writeToDisk(file: string, content: string | Uint8Array, disk: Disk, mode: number): void {
  // wx: a file of that name is not ours to overwrite, nor a link to follow
  const handle = disk.openSync(file, 'wx', mode);
  try {
    disk.writeFileSync(handle, content);
    disk.fsyncSync(handle);
  } finally {
    disk.closeSync(handle);
  }
}

/** The system's code of a failed call, such as ENOSPC. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : 'unknown trouble';

/** Why the system would not write a file, in words. */
export function whyUnwritable(error: unknown, file: string): { found: string; expected: string } {
  const folder = dirname(file);
  const expected = 'a place that can be written; nothing was changed';
  switch (codeOf(error)) {
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
      return { found: `a write that failed (${codeOf(error)})`, expected };
  }
}
