import type { Finding, Reading } from './finding.ts';
import { jsonFault } from './json-faults.ts';

/** Most characters of one file; a part of the most vertices allowed is a third of this. */
export const mostCharacters = 64 * 1024 * 1024;

/** The value a JSON file holds, or one finding with the line and column of its first fault. */
export function readJson(file: string, text: string): Reading<unknown> {
  const refused = (at: string, found: string, expected: string): Reading<unknown> => ({
    ok: false,
    findings: [{ file, at, found, expected } satisfies Finding],
  });
  if (text.length > mostCharacters) {
    return refused('', `${text.length} characters`, `at most ${mostCharacters} characters in one file`);
  }
  if (isNotUtf8(text)) return refused('', 'characters that are not UTF-8', 'a text file saved as UTF-8');
  const json = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (json.trim() === '') return refused('', 'an empty file', 'one JSON object');
  const fault = jsonFault(json);
  if (fault !== null) return refused(lineAndColumn(json, fault.offset), fault.found, fault.expected);
  return { ok: true, value: JSON.parse(json) };
}

// UTF-16 or Latin-1 read as UTF-8 shows as replacement characters or as a NUL between letters
const isNotUtf8 = (text: string): boolean => text.includes('\ufffd') || text.slice(0, 1000).includes('\0');

function lineAndColumn(text: string, offset: number): string {
  const before = text.slice(0, offset).split('\n');
  return `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
}
