import type { Finding, Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import { readJson } from '../files/read-json.ts';
import { schemaFindings } from '../files/schema-findings.ts';
import { type StackFile, stackFile } from '../files/stack-file.ts';
import { mmPer } from '../job/lengths.ts';
import type { LengthName, Stack, StackLength } from './stack.ts';

/** A depth gauge to a machined face, mm: common practice, no source. */
const gaugeErrorMm = 0.3;
/** Longer than anything between engine and gearbox. */
const longestMm = 2000;

/** A stack file's text in mm, or everything that is wrong with it. */
export function readStack(file: string, text: string): Reading<Stack> {
  const json = readJson(file, text);
  return json.ok ? stackIn(file, json.value) : json;
}

/** The same of the value it holds. */
export function stackIn(file: string, value: unknown): Reading<Stack> {
  const findings = schemaFindings(file, stackFile, value);
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  // the schema neither changes nor adds anything
  const read = value as StackFile;
  const wrong = [...tooLong(file, read), ...atOdds(file, read)];
  return wrong.length > 0 ? { ok: false, findings: wrong } : { ok: true, value: stackOf(file, read) };
}

function stackOf(file: string, { title, units, error, lengths, wanted = {} }: StackFile): Stack {
  const mm = mmPer(units);
  const commonMm = error === undefined ? gaugeErrorMm : error * mm;
  const given = Object.entries(lengths) as [LengthName, Measured][];
  const untold = given.filter(([, length]) => length.error === undefined).map(([name]) => name);
  return {
    file,
    title: title ?? file,
    units,
    lengths: Object.fromEntries(
      given.map(([name, read]): [string, StackLength] => [
        name,
        { mm: read.length * mm, errorMm: read.error === undefined ? commonMm : read.error * mm },
      ]),
    ),
    wantedMm: Object.fromEntries(Object.entries(wanted).flatMap(([name, least]) => scaled(name, least, mm))),
    errorAssumed: error === undefined && untold.length > 0 ? { of: untold, mm: gaugeErrorMm } : null,
  };
}

const scaled = (name: string, length: number | undefined, mm: number): [string, number][] =>
  length === undefined ? [] : [[name, length * mm]];

type Measured = NonNullable<StackFile['lengths'][LengthName]>;

function tooLong(file: string, { units, error, lengths, wanted = {} }: StackFile): Finding[] {
  const most = longestMm / mmPer(units);
  const values: [string, number | undefined][] = [
    ['error', error],
    ...Object.entries(lengths).flatMap(([name, read]): [string, number | undefined][] => [
      [`lengths.${name}.length`, read?.length],
      [`lengths.${name}.error`, read?.error],
    ]),
    ...Object.entries(wanted).map(([name, least]): [string, number | undefined] => [`wanted.${name}`, least]),
  ];
  return values.flatMap(([at, value]) =>
    value === undefined || Math.abs(value) <= most
      ? []
      : [{ file, at, found: String(value), expected: `no more than ${longestMm} mm, between engine and gearbox` }],
  );
}

/** Lengths of which one must be the larger, and what it means where it is not. */
const ordered: readonly (readonly [less: LengthName, more: LengthName, expected: string])[] = [
  ['splineFrom', 'splineTo', 'more than splineFrom: splines end nearer to the tip than they begin'],
  ['hubFrom', 'hubTo', "more than hubFrom: the hub's end toward the gearbox is the farther from the flywheel"],
  ['splineTo', 'tip', 'no less than splineTo: no spline goes past the tip'],
  ['splineFrom', 'tip', 'more than splineFrom: no spline begins past the tip'],
];

function atOdds(file: string, { lengths }: StackFile): Finding[] {
  return ordered.flatMap(([less, more, expected]) => {
    const [shorter, longer] = [lengths[less]?.length, lengths[more]?.length];
    if (shorter === undefined || longer === undefined) return [];
    const isSound = less === 'splineTo' ? shorter <= longer : shorter < longer;
    return isSound ? [] : [{ file, at: `lengths.${more}.length`, found: String(longer), expected }];
  });
}
