import type { StackFile } from '../../src/files/stack-file.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { BenchAsked } from '../heavy/at-bench.ts';

export const benchForms = ['hole', 'bore', 'stack'] as const;
export type BenchForm = (typeof benchForms)[number];

/** What stands in the fields of a form, by their names; lengths in mm, whatever unit they are read in. */
export type Entries = Readonly<Record<string, string>>;
export const noEntries: Entries = {};

/** Where a dial is read, by the clock; the first once more at the end tells whether it held its zero. */
const dialPlaces = [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5] as const;
export const againPlace = 'again';
export type DialPlace = (typeof dialPlaces)[number] | typeof againPlace;
export const dialled: readonly DialPlace[] = [...dialPlaces, againPlace];
export type Dialled = 'bore' | 'face';
export const dialField = (of: Dialled, place: DialPlace): string => `${of}.${place}`;

/** The fields of a form that are lengths. */
export const holeLengths = ['engagement', 'boss', 'wall', 'keep', 'depth'] as const;
export const boreLengths = ['faceRadius', 'sag', 'error', 'limit'] as const;

/** What the fields of a form ask; null where too little is typed to ask anything. */
export function questionOf(form: BenchForm, entries: Entries, units: Units): BenchAsked | null {
  switch (form) {
    case 'hole':
      return holeAsked(entries);
    case 'bore':
      return boreAsked(entries);
    case 'stack':
      return stackAsked(entries, units);
  }
}

function holeAsked(entries: Entries): BenchAsked | null {
  const { thread, was, material, have } = entries;
  if (thread === undefined) return null;
  const typed = { thread, was, material, have, ...lengthsOf(entries, holeLengths) };
  return { what: 'hole', typed };
}

function boreAsked(entries: Entries): BenchAsked | null {
  const [bore, face] = (['bore', 'face'] as const).map((of) => roundOf(entries, of));
  if (bore === undefined) return null;
  const { flange } = entries;
  return { what: 'bore', typed: { bore, face, flange, ...lengthsOf(entries, boreLengths) } };
}

/** Readings as they are written behind a flag: `12:0,3:0.08`; undefined where there are none. */
function roundOf(entries: Entries, of: Dialled): string | undefined {
  const readings = dialled.flatMap((place) => {
    const read = entries[dialField(of, place)];
    return read === undefined ? [] : [`${place === againPlace ? dialPlaces[0] : place}:${read}`];
  });
  return readings.length === 0 ? undefined : readings.join();
}

function stackAsked(entries: Entries, units: Units): BenchAsked | null {
  const lengths: Record<string, { length: number; error?: number }> = {};
  const wanted: Record<string, number> = {};
  for (const [field, text] of Object.entries(entries)) {
    const [kind, name = ''] = field.split('.');
    const error = entries[`error.${name}`];
    if (kind === 'length')
      lengths[name] = { length: Number(text), ...(error === undefined ? {} : { error: Number(error) }) };
    if (kind === 'wanted') wanted[name] = Number(text);
  }
  if (Object.keys(lengths).length === 0) return null;
  const error = entries.error === undefined ? {} : { error: Number(entries.error) };
  // held against its schema by the worker
  const file = { format: 'fettle-stack/1', units: 'mm', ...error, lengths, wanted } as StackFile;
  return { what: 'stack', file, units };
}

const lengthsOf = <K extends string>(entries: Entries, names: readonly K[]): Partial<Record<K, string>> =>
  Object.fromEntries(
    names.flatMap((name) => (entries[name] === undefined ? [] : [[name, `${entries[name]}mm`]])),
  ) as Partial<Record<K, string>>;
