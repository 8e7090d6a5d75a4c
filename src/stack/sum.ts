import type { StackLength } from './stack.ts';

/** A length with what it may be out: at worst, and by root of the sum of squares; mm. */
export interface Summed {
  readonly mm: number;
  readonly worstMm: number;
  readonly rssMm: number;
}

/** Lengths added up, each with its sign. */
export function summed(terms: readonly (readonly [sign: number, length: StackLength])[]): Summed {
  return {
    mm: terms.reduce((sum, [sign, { mm }]) => sum + sign * mm, 0),
    worstMm: terms.reduce((sum, [sign, { errorMm }]) => sum + Math.abs(sign) * errorMm, 0),
    rssMm: Math.hypot(...terms.map(([sign, { errorMm }]) => sign * errorMm)),
  };
}
