import { existsSync, mkdirSync, statSync } from 'node:fs';
import type { Finding } from '../src/files/finding.ts';
import { failWith } from './report-findings.ts';

/** A folder, or a place where one can be made. */
export function folderFor(output: string): string {
  if (!existsSync(output) || statSync(output).isDirectory()) return output;
  return refuse(output, 'a file', 'a folder to write to');
}

export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown trouble';
    refuse(folder, `a folder that cannot be made (${code})`, 'a folder, or a place where one can be made');
  }
}

const refuse = (file: string, found: string, expected: string): never =>
  failWith([{ file, at: '--output', found, expected } satisfies Finding]);
