import { flushMm } from './tolerances.ts';

/** Depths or stand-offs (mm) in order; those nearer together than what is only flush are one. */
export function distinctDepths(all: readonly number[]): number[] {
  const found: number[] = [];
  for (const mm of all.toSorted((a, b) => a - b)) {
    if (mm > (found.at(-1) ?? Number.NEGATIVE_INFINITY) + flushMm) found.push(mm);
  }
  return found;
}
