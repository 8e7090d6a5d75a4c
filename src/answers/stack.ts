import { round6 } from '../geometry/plane/rounding.ts';
import type { StackResult, StackRow } from '../stack/stack-result.ts';
import { roundOrNull } from './rounded.ts';
import type { StackAnswer } from './stack-answer.ts';

/** A stack as JSON, the answer of `fettle stack --json`: mm, each figure rounded to 1e-6. */
export const stackAnswer = ({ stack, verdict, rows }: StackResult): StackAnswer => ({
  format: 'fettle-stack-answer/1',
  title: stack.title,
  verdict,
  rows: rows.map(rowAnswer),
  errorAssumed: stack.errorAssumed && { of: [...stack.errorAssumed.of], mm: round6(stack.errorAssumed.mm) },
});

function rowAnswer(row: StackRow): StackAnswer['rows'][number] {
  if (row.state === 'missing') return { name: row.name, state: row.state, missing: [...row.missing] };
  return {
    name: row.name,
    state: row.state,
    mm: round6(row.mm),
    worstMm: round6(row.worstMm),
    rssMm: round6(row.rssMm),
    leastMm: round6(row.leastMm),
    mostMm: round6(row.mostMm),
    wantedMm: roundOrNull(row.wantedMm),
  };
}
