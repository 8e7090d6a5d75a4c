import type { Warning } from '../answers/check-answer.ts';
import type { Casting } from '../job/casting.ts';
import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import { jointWarning } from './warnings.ts';

/** One warning for a part whose trace error is only assumed on some of its sections. */
export function traceWarnings({ name, sections }: Casting, units: Units): Warning[] {
  const assumed = sections.filter((section) => !section.traceErrorStated);
  const [first] = assumed;
  if (first === undefined) return [];
  const ids = assumed.map((section) => section.id).join(', ');
  const text = `${name}: no trace error is stated for ${ids}; ± ${givenLength(first.traceErrorMm, units)} is assumed. State traceError, or gotBy, to have the true figure.`;
  return [jointWarning('trace-error-assumed', text)];
}
