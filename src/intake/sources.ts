import type { Finding, Reading } from '../files/finding.ts';
import { readDxf } from './drawing/dxf.ts';
import { readSvg } from './drawing/svg.ts';
import type { Drawing } from './drawing.ts';
import { readCsv } from './table/csv.ts';

/** A kind of file that outlines can be read from. */
interface Source {
  readonly endings: readonly string[];
  readonly read: (file: string, bytes: Uint8Array) => Reading<Drawing>;
}

const sources: readonly Source[] = [
  { endings: ['.csv', '.tsv', '.txt'], read: readCsv },
  { endings: ['.dxf'], read: readDxf },
  { endings: ['.svg'], read: readSvg },
];

/** Every ending of a file name that can be read. */
export const knownEndings: readonly string[] = sources.flatMap(({ endings }) => endings);

/** Reads the outlines in a file by the kind its name ends with. */
export function readDrawing(file: string, bytes: Uint8Array): Reading<Drawing> {
  const source = sources.find(({ endings }) => endings.some((ending) => file.toLowerCase().endsWith(ending)));
  if (source !== undefined) return source.read(file, bytes);
  const expected = `a file ending in ${knownEndings.join(', ')}`;
  return {
    ok: false,
    findings: [{ file, at: '', found: 'a kind of file that is not known', expected } satisfies Finding],
  };
}
