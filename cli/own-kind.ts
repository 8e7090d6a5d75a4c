import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import { extname } from 'node:path';
import type { Finding } from '../src/files/finding.ts';

/** How a file of each kind begins, by its ending. */
const kinds: Readonly<Record<string, { readonly name: string; readonly begins: RegExp }>> = {
  '.pdf': { name: 'a PDF', begins: /^%PDF-/ },
  '.svg': {
    name: 'an SVG drawing',
    begins: /^\uFEFF?(?:<\?xml[^>]*>)?\s*(?:<!--[\s\S]*?-->\s*|<!DOCTYPE[^>]*>\s*)*<svg[\s>]/,
  },
  '.dxf': { name: 'a DXF drawing', begins: /^(?:\s*999\r?\n.*\r?\n)*\s*0\r?\nSECTION/ },
  '.html': {
    name: 'a report of Fettle',
    begins: /^<!DOCTYPE html>\s*<html[^>]*><head><meta[^>]*><meta name="generator" content="Fettle/,
  },
  '.csv': { name: 'a marking-out table', begins: /^(?:place,section|pass,line|hole,in),/ },
};

const headBytes = 2048;

/** Those of some files that stand already and are not what would take their place; all of them, so none is half done. */
export const foreignFiles = (files: readonly string[]): Finding[] => files.flatMap(foreign);

function foreign(file: string): Finding[] {
  const kind = kinds[extname(file)];
  if (kind === undefined || !existsSync(file) || (statSync(file).isFile() && kind.begins.test(headOf(file)))) return [];
  const found = statSync(file).isFile() ? `a file that is not ${kind.name}` : 'something that is no file';
  return [{ file, at: '', found, expected: `${kind.name} to replace, or no file of that name; nothing was written` }];
}

function headOf(file: string): string {
  const handle = openSync(file, 'r');
  try {
    const head = new Uint8Array(headBytes);
    return new TextDecoder().decode(head.subarray(0, readSync(handle, head)));
  } finally {
    closeSync(handle);
  }
}
