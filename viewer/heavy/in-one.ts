import { zipSync } from 'fflate';
import type { HandedFile, MadeFile } from './questions.ts';

/** Up to here packing tightly takes a third of a second; beyond, half of that time is worth a tenth more to send. */
const mostTightBytes = 2_000_000;

/** The first day a zip can name, by the clock on the wall, as zips tell time: the same bytes whenever and wherever. */
const firstDay = (): Date => new Date(1980, 0, 1);

/** One tap, one download: a file by itself as it is, several as a zip of that name; null where there are none. */
export function inOne(files: readonly MadeFile[], zipName: string): HandedFile | null {
  const [first] = files;
  if (first === undefined) return null;
  if (files.length === 1) return { ...first, holds: [] };
  const holds = apartOnDisk(files.map(({ name }) => name));
  const contents = files.map(({ data }) => (typeof data === 'string' ? new TextEncoder().encode(data) : data));
  const bytes = contents.reduce((sum, { byteLength }) => sum + byteLength, 0);
  const entries = Object.fromEntries(contents.map((content, i) => [holds[i] ?? '', content]));
  const data = zipSync(entries, { level: bytes > mostTightBytes ? 1 : 6, mtime: firstDay() });
  return { name: zipName, mediaType: 'application/zip', data, holds };
}

/** Names with a number put to those that a disk would take for one before them, be it for capitals alone. */
function apartOnDisk(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const [, stem = name, ending = ''] = /^(.*?)(\.[^.]*)?$/su.exec(name) ?? [];
    let free = name;
    for (let count = 2; taken.has(free.toLowerCase()); count += 1) free = `${stem}-${count}${ending}`;
    taken.add(free.toLowerCase());
    return free;
  });
}
