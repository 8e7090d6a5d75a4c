import { readFileSync, statSync } from 'node:fs';
import type { Finding, Reading } from '../src/files/finding.ts';

const megabyte = 1024 * 1024;
/** Far above any tracing (a hundred thousand points are about 4 MB), far below what would hang a laptop. */
export const largestFileBytes = 64 * megabyte;

/** A file's bytes, refused where it is no plain file or larger than `largestFileBytes`. */
export function loadBytes(file: string): Reading<Uint8Array<ArrayBuffer>> {
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) return refused(file, 'a folder', 'a file');
    if (!stat.isFile()) return refused(file, 'a device or pipe', 'a plain file on disk');
    if (stat.size > largestFileBytes) {
      const found = `${Math.ceil(stat.size / megabyte)} MB`;
      return refused(file, found, `no more than ${largestFileBytes / megabyte} MB`);
    }
    return { ok: true, value: new Uint8Array(readFileSync(file)) };
  } catch (error) {
    return refused(file, whyUnreadable(error), 'a file that can be read');
  }
}

/** A text file as UTF-8; UTF-16 with its mark is understood too, anything else refused. */
export function loadText(file: string): Reading<string> {
  const bytes = loadBytes(file);
  return bytes.ok ? decoded(file, bytes.value) : bytes;
}

/** The bytes of a text file as text, as `loadText` has it. */
export function decoded(file: string, bytes: Uint8Array): Reading<string> {
  try {
    return { ok: true, value: new TextDecoder(encodingOf(bytes), { fatal: true }).decode(bytes) };
  } catch {
    return refused(file, 'bytes that are no text', 'text in UTF-8');
  }
}

function encodingOf([first, second]: Uint8Array): string {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return 'utf-8';
}

const refused = (file: string, found: string, expected: string): Reading<never> => ({
  ok: false,
  findings: [{ file, at: '', found, expected } satisfies Finding],
});

/** Why the system would not read a file, in words. */
function whyUnreadable(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown trouble';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'no such file';
    case 'EACCES':
    case 'EPERM':
      return 'a file you may not read';
    case 'ELOOP':
      return 'a link that leads back to itself';
    case 'ENAMETOOLONG':
      return 'a name too long for the disk';
    default:
      return `unreadable (${code})`;
  }
}
