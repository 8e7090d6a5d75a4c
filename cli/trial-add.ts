import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import type { GoFile, TrialFile, TrialReadingFile } from '../src/files/trial-file.ts';
import { mmPer } from '../src/job/lengths.ts';
import type { Joint } from '../src/joint/joint.ts';
import type { MarkingTable } from '../src/markout/marking-row.ts';
import { benchPlace } from '../src/trial/bench-place.ts';

/** What `fettle trial FIT add` was given. */
export interface AddFlags {
  readonly go?: string;
  readonly date?: string;
  readonly cut?: string;
  readonly took?: readonly string[];
  readonly stopped?: string;
  readonly clay?: readonly string[];
  readonly mark?: readonly string[];
  readonly face?: readonly string[];
  readonly note?: string;
}

/** A trial file with what was read put into one of its goes; or all that could not be understood. */
export function withAdded(
  joint: Joint,
  file: string,
  before: TrialFile,
  flags: AddFlags,
  table: MarkingTable,
): Reading<TrialFile> {
  const words = new ReadWords(file);
  const { goes } = before;
  const number = flags.go === undefined ? Math.max(1, goes.length) : Number(flags.go);
  if (!Number.isInteger(number) || number < 1 || number > goes.length + 1)
    words.refuse('--go', shown(flags.go), goes.length === 0 ? '1' : `1 to ${goes.length + 1}`);
  const old: GoFile = goes[number - 1] ?? { go: number };
  const taken = goes.flatMap(({ readings = [] }) => readings.map(({ id }) => id));
  const readings = withIds(readingsIn(words, joint, table, flags), taken);
  const took = (flags.took ?? []).flatMap((text) => words.tookOff(text));
  if (flags.cut !== undefined && !['none', 'first', 'planned'].includes(flags.cut))
    words.refuse('--cut', shown(flags.cut), 'none, first or planned');
  const stopped = flags.stopped === undefined ? old.stopped : words.stopped(flags.stopped);
  const faces = (flags.face ?? []).map((text) => words.pairs('--face', text, ['at', 'gap']));
  const go = {
    ...old,
    date: flags.date ?? old.date,
    cut: took.length === 0 ? (flags.cut ?? old.cut) : [...(Array.isArray(old.cut) ? old.cut : []), ...took],
    stopped,
    readings: joined(old.readings, readings),
    faces: joined(old.faces, faces),
    note: flags.note ?? old.note,
  };
  if (words.findings.length > 0) return { ok: false, findings: words.findings };
  // whether it all makes sense is the schema's to say, and the job's
  const added = [...goes.slice(0, number - 1), withoutBlanks(go) as GoFile, ...goes.slice(number)];
  return { ok: true, value: { ...before, goes: added } };
}

const joined = (before: readonly unknown[] | undefined, more: readonly unknown[]): readonly unknown[] | undefined =>
  more.length === 0 ? before : [...(before ?? []), ...more];

const withoutBlanks = (value: object): object =>
  Object.fromEntries(Object.entries(value).filter(([, held]) => held !== undefined));

type Values = Readonly<Record<string, string | number | readonly [number, number]>>;

interface NewReading {
  readonly kind: 'clay' | 'mark';
  readonly id?: string;
}

const where = ['place', 'section', 'at', 'depth', 'turn', 'standOff', 'error', 'id'];

function readingsIn(
  words: ReadWords,
  joint: Joint,
  table: MarkingTable,
  { clay = [], mark = [] }: AddFlags,
): NewReading[] {
  return [
    ...clay.map((text) => {
      const given = words.pairs('--clay', text, ['thickness', ...where]);
      return { kind: 'clay' as const, ...placed(words, '--clay', joint, table, given) };
    }),
    ...mark.map((text) => {
      const { touched = 'yes', ...given } = words.pairs('--mark', text, ['touched', ...where]);
      if (touched !== 'yes' && touched !== 'no')
        words.refuse('--mark', `touched=${touched}`, 'touched=yes or touched=no');
      return { kind: 'mark' as const, ...placed(words, '--mark', joint, table, given), touched: touched === 'yes' };
    }),
  ];
}

/** Every reading under a name of its own: c1, c2 … for clay, m1, m2 … for marks. */
function withIds(readings: readonly NewReading[], taken: readonly string[]): TrialReadingFile[] {
  const ids = new Set(taken);
  return readings.map((reading) => {
    const letter = reading.kind === 'clay' ? 'c' : 'm';
    let n = 1;
    while (ids.has(`${letter}${n}`)) n += 1;
    const id = reading.id ?? `${letter}${n}`;
    ids.add(id);
    return { ...reading, id } as TrialReadingFile;
  });
}

/** A reading with its place written out: as it was given, or where the marking-out table has it. */
function placed(words: ReadWords, at: string, joint: Joint, table: MarkingTable, values: Values): object {
  const { place, turn, standOff, ...given } = values;
  const position = turn === undefined && standOff === undefined ? {} : { position: withoutBlanks({ standOff, turn }) };
  if (place === undefined) return { ...given, ...position };
  const row = table.find((one) => one.place === place);
  const bench = row === undefined ? null : benchPlace(joint, row);
  if (bench === null) {
    const places = table.length === 0 ? 'it has none' : `1 to ${table.length}`;
    words.refuse(
      at,
      `place ${place}`,
      `a place of the marking-out table (${places}) beside which the moving part stands`,
    );
    return given;
  }
  const inFile = (mm: number): number => Number((mm / mmPer(joint.fit.units)).toFixed(4));
  const found = { section: bench.section, at: [inFile(bench.at.x), inFile(bench.at.y)], depth: inFile(bench.depthMm) };
  return { ...found, ...given, ...position };
}

const numbers = new Set(['place', 'depth', 'turn', 'standOff', 'error', 'thickness', 'fromHole', 'gap']);
const points = new Set(['at', 'shift']);

/** Reads what was typed behind flags, and keeps what it could not. */
class ReadWords {
  readonly findings: Finding[] = [];
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  refuse(at: string, found: string, expected: string): void {
    this.findings.push({ file: this.#file, at, found, expected });
  }

  /** `key=value,key=value` as what it holds; what is none of the keys, or no number, is refused. */
  pairs(at: string, text: string, keys: readonly string[]): Values {
    return Object.fromEntries(text.split(',').flatMap((pair) => this.#pair(at, pair, keys)));
  }

  #pair(at: string, pair: string, keys: readonly string[]): [string, Values[string]][] {
    const [, key = '', value = ''] = /^\s*(\w+)\s*=\s*(.+?)\s*$/.exec(pair) ?? [];
    if (!keys.includes(key)) {
      this.refuse(at, shown(pair), `pairs such as ${keys[0]}=…, parted by commas, of ${keys.join(', ')}`);
      return [];
    }
    if (points.has(key)) {
      const [x = '', y = '', ...more] = value.split('/');
      if (isNumber(x) && isNumber(y) && more.length === 0) return [[key, [Number(x), Number(y)]]];
      this.refuse(at, `${key}=${value}`, `${key}=x/y, such as ${key}=150.2/101`);
      return [];
    }
    if (!numbers.has(key)) return [[key, value]];
    if (isNumber(value)) return [[key, Number(value)]];
    this.refuse(at, `${key}=${value}`, `a number for ${key}`);
    return [];
  }

  tookOff(text: string): { readonly place: number; readonly takeOff: number }[] {
    const [, place, takeOff] = /^\s*(\d+)\s*=\s*(\d+(?:\.\d+)?)\s*$/.exec(text) ?? [];
    if (place !== undefined && takeOff !== undefined) return [{ place: Number(place), takeOff: Number(takeOff) }];
    this.refuse('--took', shown(text), 'a place and what came off there, such as 7=5.2');
    return [];
  }

  stopped(text: string): Values | 'home' {
    if (text.trim() === 'home') return 'home';
    return this.pairs('--stopped', text, ['turn', 'standOff', 'shift', 'dowel', 'fromHole', 'error']);
  }
}

const isNumber = (text: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text.trim());
