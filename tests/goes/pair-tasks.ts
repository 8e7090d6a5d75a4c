import { familyNames } from './castings/casting-pair.ts';
import type { PairTask } from './run-pair.ts';

/** So many pairs, the families in turn; the same number gives the same pairs. */
export const pairTasks = (pairs: number, traceErrorsMm: readonly number[]): PairTask[] =>
  Array.from({ length: Math.ceil(pairs / familyNames.length) }, (_, i) => i + 1)
    .flatMap((seed) => familyNames.map((family) => ({ family, seed, traceErrorsMm })))
    .slice(0, pairs);
