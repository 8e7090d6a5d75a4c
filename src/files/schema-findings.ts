import { z } from 'zod';
import type { Finding } from './finding.ts';
import { suggesting } from './nearest.ts';
import { withShortOutlines } from './plain-path.ts';
import { shown } from './shown.ts';

type Issue = z.core.$ZodIssue;

/** What keeps a raw value from being what a schema describes; paths start with `base`, where the value stands. */
export function schemaFindings(
  file: string,
  schema: z.ZodType,
  raw: unknown,
  base: readonly PropertyKey[] = [],
): readonly Finding[] {
  const { error } = schema.safeParse(withShortOutlines(raw), { error: expectedWords, reportInput: true });
  return (error?.issues ?? []).slice(0, enough).flatMap((issue) => findingsOfIssue(file, issue, base));
}

/**
 * What was expected, in words; for unknown keys, the keys that are known there, parted by commas.
 * Undefined leaves the message of the schema itself.
 */
function expectedWords(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? issue.expected;
    case 'unrecognized_keys':
      return knownKeys(issue.inst).join(', ');
    case 'invalid_union':
      return descriptionOf(issue.inst);
    case 'invalid_value':
      return issue.values.length === 1
        ? shown(issue.values[0])
        : `one of ${issue.values.map((value) => shown(value)).join(', ')}`;
    case 'too_small':
      return limitWords(issue.origin, issue.inclusive ? 'at least' : 'more than', issue.minimum);
    case 'too_big':
      return limitWords(issue.origin, issue.inclusive ? 'at most' : 'less than', issue.maximum);
    default:
      return undefined;
  }
}

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text in double quotes',
  boolean: 'true or false',
  array: 'a list in square brackets',
  tuple: 'a list in square brackets',
  object: 'an object in braces',
};

const limitWords = (origin: string, word: string, limit: number | bigint): string =>
  origin === 'array' ? `${word} ${limit} in the list` : `${word} ${limit}`;

function knownKeys(schema: unknown): string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

const descriptionOf = (schema: unknown): string | undefined =>
  schema instanceof z.ZodType ? schema.description : undefined;

function findingsOfIssue(file: string, issue: Issue, base: readonly PropertyKey[]): Finding[] {
  const path = [...base, ...issue.path];
  if (issue.code === 'unrecognized_keys') {
    const known = issue.message.split(', ');
    return issue.keys.slice(0, enough).map((key) => unknownKey(file, path, key, known));
  }
  if (issue.code === 'invalid_union') {
    const meant = branchMeant(issue.errors);
    if (meant !== undefined) return meant.slice(0, enough).flatMap((inner) => findingsOfIssue(file, inner, path));
  }
  return [{ file, at: pathText(path), found: shown(issue.input), expected: issue.message }];
}

/** More than anyone will read; a file of nothing but faults must not take long to refuse. */
const enough = 100;

/** Of an either-or, the form the value was meant in: the only one whose outermost kind it has. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  const ofItsKind = branches.filter((issues) => !issues.some((i) => i.path.length === 0 && i.code === 'invalid_type'));
  return ofItsKind.length === 1 ? ofItsKind[0] : undefined;
}

function unknownKey(file: string, path: readonly PropertyKey[], key: string, known: readonly string[]): Finding {
  const found = `the unknown key ${shown(key)}`;
  const expected = `one of the keys ${known.join(', ')}`;
  return suggesting({ file, at: pathText([...path, key]), found, expected }, key, known);
}

/** A path such as `sections[2].loops[0]`; a key that is no plain word is quoted. */
export function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((step, i) => {
      if (typeof step === 'number') return `[${step}]`;
      const key = String(step);
      if (!/^[\w$-]{1,64}$/.test(key)) return `[${shown(key)}]`;
      return i === 0 ? key : `.${key}`;
    })
    .join('');
}
