import type { Finding, Reading } from '../../files/finding.ts';
import { shown } from '../../files/shown.ts';

/** The tags of a DXF file in order: a group code and a value each; tag i stands on lines 2i + 1 and 2i + 2. */
export interface Tags {
  readonly codes: readonly number[];
  readonly values: readonly string[];
}

/** The line of tag i's value. */
export const lineOfTag = (i: number): number => 2 * i + 2;

/** Splits an ASCII DXF file into tags; refuses one whose group codes are no whole numbers. */
export function readTags(file: string, text: string): Reading<Tags> {
  const lines = text.split(/\r\n|\n|\r/);
  const codes: number[] = [];
  const values: string[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = lines[i] as string;
    if (!/^\s*-?\d{1,5}\s*$/.test(code)) return refused(file, i, code);
    codes.push(Number(code));
    values.push(lines[i + 1] as string);
    if (codes.at(-1) === 0 && values.at(-1)?.trim() === 'EOF') break;
  }
  return { ok: true, value: { codes, values } };
}

function refused(file: string, index: number, code: string): Reading<never> {
  const expected = index === 0 ? 'a DXF file, which starts with a group code' : 'a group code, a whole number';
  return { ok: false, findings: [{ file, at: `line ${index + 1}`, found: shown(code), expected }] };
}

/** A run of tags that starts with a tag of code 0: one entity, one table entry, one section's name. */
export interface Entity {
  readonly kind: string;
  readonly tags: Tags;
  /** Its own tags, from the one after its name up to but without `to`. */
  readonly from: number;
  readonly to: number;
}

/** Cuts tags into entities at every code 0. */
export function entitiesOf(tags: Tags): Entity[] {
  const starts: number[] = [];
  tags.codes.forEach((code, i) => {
    if (code === 0) starts.push(i);
  });
  return starts.map((start, i) => ({
    kind: (tags.values[start] as string).trim().toUpperCase(),
    tags,
    from: start + 1,
    to: starts[i + 1] ?? tags.codes.length,
  }));
}

/** Where an entity starts, in words. */
export const lineInFile = ({ from }: Entity): string => `line ${lineOfTag(from - 1)}`;

/** Every value of an entity with this code, in order. */
export function valuesOf({ tags, from, to }: Entity, code: number): string[] {
  const found: string[] = [];
  for (let i = from; i < to; i++) if (tags.codes[i] === code) found.push(tags.values[i] as string);
  return found;
}

export function textOf({ tags, from, to }: Entity, code: number, otherwise = ''): string {
  for (let i = from; i < to; i++) if (tags.codes[i] === code) return (tags.values[i] as string).trim();
  return otherwise;
}

/** The first number of an entity with this code; numbers are known to be sound by `unsoundNumbers`. */
export function numberOf(entity: Entity, code: number, otherwise = 0): number {
  const text = textOf(entity, code);
  return text === '' ? otherwise : Number(text);
}

export const numbersOf = (entity: Entity, code: number): number[] => valuesOf(entity, code).map(Number);

/** Codes 10–59 and 210–239 hold coordinates, lengths and angles; 60–99 whole numbers. */
const holdsNumber = (code: number): boolean => (code >= 10 && code < 100) || (code >= 210 && code < 240);

const mostFindings = 20;

/** Every value of an entity that should be a number and is none, up to a few. */
export function unsoundNumbers(file: string, entities: readonly Entity[]): Finding[] {
  const findings: Finding[] = [];
  for (const { kind, tags, from, to } of entities) {
    for (let i = from; i < to && findings.length < mostFindings; i++) {
      const [code, value] = [tags.codes[i] as number, tags.values[i] as string];
      if (!holdsNumber(code) || (value.trim() !== '' && Number.isFinite(Number(value)))) continue;
      findings.push({ file, at: `line ${lineOfTag(i)}`, found: `${shown(value)} in a ${kind}`, expected: 'a number' });
    }
  }
  return findings;
}
