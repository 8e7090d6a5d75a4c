import type { Source } from './sourced.ts';

/** A drill by the name on its box; mm. */
export interface Drill {
  readonly name: string;
  readonly diameterMm: number;
}

/** Where the sizes of number and letter drills come from; fractions are computed. */
export const inchDrillSource: Source = { basis: 'from memory', from: 'ASME B94.11M' };

/** Number drills 1–50, in thousandths of an inch. */
const numberDrillsThou = [
  228, 221, 213, 209, 205.5, 204, 201, 199, 196, 193.5, 191, 189, 185, 182, 180, 177, 173, 169.5, 166, 161, 159, 157,
  154, 152, 149.5, 147, 144, 140.5, 136, 128.5, 120, 116, 113, 111, 110, 106.5, 104, 101.5, 99.5, 98, 96, 93.5, 89, 86,
  82, 81, 78.5, 76, 73, 70,
] as const;

/** Letter drills A–Z, in thousandths of an inch. */
const letterDrillsThou = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368, 377, 386,
  397, 404, 413,
] as const;

const named = (name: string, thou: number): Drill => ({ name, diameterMm: (thou / 1000) * 25.4 });

/** Fractions of an inch by 64ths, in lowest terms. */
function fraction(sixtyFourths: number): Drill {
  let [over, under] = [sixtyFourths, 64];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return { name: `${over}/${under}`, diameterMm: (sixtyFourths / 64) * 25.4 };
}

/** Number drills `#1`–`#50`, letter drills `A`–`Z` and fractions `1/16`–`63/64`, smallest first. */
export const inchDrills: readonly Drill[] = [
  ...numberDrillsThou.map((thou, i) => named(`#${i + 1}`, thou)),
  ...letterDrillsThou.map((thou, i) => named(String.fromCharCode(65 + i), thou)),
  ...Array.from({ length: 60 }, (_, i) => fraction(i + 4)),
].sort((a, b) => a.diameterMm - b.diameterMm);

/** The inch drill of a name such as `#7`, `F` or `27/64`; null where there is none. */
export const inchDrillNamed = (name: string): Drill | null =>
  inchDrills.find((drill) => drill.name === name.trim().toUpperCase()) ?? null;
