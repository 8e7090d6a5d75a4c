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

type Value = string | number | readonly [number, number];

/** A trial file with what was read put into one of its goes; or all that could not be understood. */
export function withAdded(
  joint: Joint,
  file: string,
  before: TrialFile,
  flags: AddFlags,
  table: MarkingTable,
): Reading<TrialFile> {
  const findings: Finding[] = [];
  const number = flags.go === undefined ? Math.max(1, before.goes.length) : Number(flags.go);
  const last = before.goes.length;
  if (!Number.isInteger(number) || number < 1 || number > last + 1)
    findings.push({ file, at: '--go', found: shown(flags.go), expected: last === 0 ? '1' : `1 to ${last + 1}` });
  const old: GoFile = before.goes[number - 1] ?? { go: number };
  const pairs = (flag: string, text: string, keys: readonly string[]): Record<string, Value> =>
    pairsIn(file, flag, text, keys, findings);
  const mmOfUnit = mmPer(joint.fit.units);
  const ids = new Set(before.goes.flatMap(({ readings = [] }) => readings.map(({ id }) => id)));
  const fresh = (letter: string): string => {
    let n = 1;
    while (ids.has(`${letter}${n}`)) n += 1;
    ids.add(`${letter}${n}`);
    return `${letter}${n}`;
  };
  const placed = (
    flag: string,
    { place, turn, standOff, ...given }: Record<string, Value>,
  ): Record<string, unknown> => {
    const position = turn === undefined && standOff === undefined ? {} : { position: { standOff, turn } };
    if (place === undefined) return { ...given, ...position };
    const row = table.find((one) => one.place === place);
    const bench = row === undefined ? null : benchPlace(joint, row);
    if (bench === null) {
      findings.push({
        file,
        at: flag,
        found: `place ${place}`,
        expected: `a place of the marking-out table (${table.length === 0 ? 'it has none' : `1 to ${table.length}`}) beside which the moving part stands`,
      });
      return {};
    }
    const inFile = (mm: number): number => Number((mm / mmOfUnit).toFixed(4));
    return {
      section: bench.section,
      at: [inFile(bench.at.x), inFile(bench.at.y)],
      depth: inFile(bench.depthMm),
      ...given,
      ...position,
    };
  };
  const where = ['id', 'place', 'section', 'at', 'depth', 'turn', 'standOff', 'error'];
  const readings = [
    ...(flags.clay ?? []).map((text) => ({
      id: '',
      kind: 'clay',
      ...placed('--clay', pairs('--clay', text, [...where, 'thickness'])),
    })),
    ...(flags.mark ?? []).map((text) => {
      const { touched = 'yes', ...given } = pairs('--mark', text, [...where, 'touched']);
      if (touched !== 'yes' && touched !== 'no')
        findings.push({ file, at: '--mark', found: `touched=${touched}`, expected: 'touched=yes or touched=no' });
      return { id: '', kind: 'mark', ...placed('--mark', given), touched: touched === 'yes' };
    }),
  ].map((reading) => ({ ...reading, id: String(reading.id || fresh(reading.kind === 'clay' ? 'c' : 'm')) }));
  const took = (flags.took ?? []).flatMap((text) => {
    const [, place, takeOff] = /^\s*(\d+)\s*=\s*(\d+(?:\.\d+)?)\s*$/.exec(text) ?? [];
    if (place !== undefined && takeOff !== undefined) return [{ place: Number(place), takeOff: Number(takeOff) }];
    findings.push({
      file,
      at: '--took',
      found: shown(text),
      expected: 'a place and what came off there, such as 7=5.2',
    });
    return [];
  });
  if (flags.cut !== undefined && !['none', 'first', 'planned'].includes(flags.cut))
    findings.push({ file, at: '--cut', found: shown(flags.cut), expected: 'none, first or planned' });
  const go: GoFile = {
    ...old,
    ...(flags.date === undefined ? {} : { date: flags.date }),
    ...(flags.cut === undefined ? {} : { cut: flags.cut as 'none' }),
    ...(took.length === 0 ? {} : { cut: [...(Array.isArray(old.cut) ? old.cut : []), ...took] }),
    ...(flags.stopped === undefined ? {} : { stopped: stoppedIn(flags.stopped, pairs) }),
    ...(readings.length === 0
      ? {}
      : { readings: [...(old.readings ?? []), ...(readings as unknown as TrialReadingFile[])] }),
    ...(flags.face === undefined
      ? {}
      : { faces: [...(old.faces ?? []), ...flags.face.map((text) => pairs('--face', text, ['at', 'gap']) as never)] }),
    ...(flags.note === undefined ? {} : { note: flags.note }),
  };
  if (findings.length > 0) return { ok: false, findings };
  return {
    ok: true,
    value: { ...before, goes: [...before.goes.slice(0, number - 1), go, ...before.goes.slice(number)] },
  };
}

const stoppedIn = (
  text: string,
  pairs: (flag: string, text: string, keys: readonly string[]) => Record<string, Value>,
): GoFile['stopped'] =>
  text.trim() === 'home'
    ? 'home'
    : (pairs('--stopped', text, ['turn', 'standOff', 'shift', 'dowel', 'fromHole', 'error']) as GoFile['stopped']);

const numbers = new Set(['place', 'depth', 'turn', 'standOff', 'error', 'thickness', 'fromHole', 'gap']);
const points = new Set(['at', 'shift']);

/** `key=value,key=value` as what it holds; everything that is none of the keys, or no number, is a finding. */
function pairsIn(
  file: string,
  at: string,
  text: string,
  keys: readonly string[],
  findings: Finding[],
): Record<string, Value> {
  return Object.fromEntries(
    text.split(',').flatMap((pair): [string, Value][] => {
      const [, key = '', value = ''] = /^\s*(\w+)\s*=\s*(.+?)\s*$/.exec(pair) ?? [];
      if (!keys.includes(key)) {
        findings.push({
          file,
          at,
          found: shown(pair),
          expected: `pairs such as ${keys[0]}=…, parted by commas, of ${keys.join(', ')}`,
        });
        return [];
      }
      if (points.has(key)) return pointIn(file, at, key, value, findings);
      if (!numbers.has(key)) return [[key, value]];
      if (isNumber(value)) return [[key, Number(value)]];
      findings.push({ file, at, found: `${key}=${value}`, expected: `a number for ${key}` });
      return [];
    }),
  );
}

function pointIn(file: string, at: string, key: string, value: string, findings: Finding[]): [string, Value][] {
  const [x = '', y = '', ...more] = value.split('/');
  if (isNumber(x) && isNumber(y) && more.length === 0) return [[key, [Number(x), Number(y)]]];
  findings.push({ file, at, found: `${key}=${value}`, expected: `${key}=x/y, such as ${key}=150.2/101` });
  return [];
}

const isNumber = (text: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text.trim());
