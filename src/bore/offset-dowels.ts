import { offsetDowelSource, offsetDowelsIn } from '../trade/bore-run-out.ts';
import type { Source } from '../trade/sourced.ts';

/** Eccentric dowels of one size, both turned so that they move the housing straight back; mm. */
export interface OffsetDowel {
  readonly inch: number;
  readonly mm: number;
  /** How far the bore's centre is off the crank with them. */
  readonly leftMm: number;
  /** Whether that is within the limit however the readings err. */
  readonly within: boolean;
}

export interface OffsetDowels {
  readonly sizes: readonly OffsetDowel[];
  /** Of those that leave less than there is the one that leaves least; null where none does. */
  readonly best: OffsetDowel | null;
  readonly source: Source;
}

/** What the eccentric dowels that are sold leave of an offset of `offMm`, known to ± `boundMm`. */
export function offsetDowelsFor(offMm: number, boundMm: number, limitMm: number): OffsetDowels {
  const sizes = offsetDowelsIn.map((inch): OffsetDowel => {
    const mm = inch * 25.4;
    const leftMm = Math.abs(offMm - mm);
    return { inch, mm, leftMm, within: leftMm + boundMm <= limitMm };
  });
  const [least] = sizes.filter(({ leftMm }) => leftMm < offMm).sort((a, b) => a.leftMm - b.leftMm);
  return { sizes, best: least ?? null, source: offsetDowelSource };
}
