import type { Reading } from '../files/finding.ts';
import { shown } from '../files/shown.ts';
import { wrongValue } from './wrong-value.ts';

const mostLengthMm = 1000;
const longestWritten = 40;

const written = /^(\d+(?:\.\d+)?|\.\d+)(mm|in|")?$/;

/** A length with `mm`, `in` or nothing behind it, in mm; null where it is none. */
export function lengthMm(text: string): number | null {
  const [, number, unit = 'mm'] = written.exec(text.trim().slice(0, longestWritten)) ?? [];
  if (number === undefined) return null;
  // beyond the twelfth digit there is only what the product left
  return unit === 'mm' ? Number(number) : Number((Number(number) * 25.4).toPrecision(12));
}

/** The length of a flag in mm, no more than a metre, or what is wrong with it. */
export function readLength(at: string, text: string, least: 'more than 0' | '0 or more'): Reading<number> {
  const mm = lengthMm(text);
  if (mm !== null && mm <= mostLengthMm && (mm > 0 || least === '0 or more')) return { ok: true, value: mm };
  const expected = `a length of ${least} to ${mostLengthMm} mm, such as 20 or 0.75in`;
  return wrongValue(at, shown(text), expected);
}
