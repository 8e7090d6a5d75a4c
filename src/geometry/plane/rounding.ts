import type { Vec } from './vec.ts';

/** `x` to the nearest 1e-6, never −0: the one rounding every number of an answer goes through. */
export const round6 = (x: number): number => Math.round(x * 1e6) / 1e6 + 0;

/** The least multiple of 1e-6 that is not below `x`: for tolerances and bounds, which must never be understated. */
export function roundUp6(x: number): number {
  const nearest = round6(x);
  return nearest >= x ? nearest : round6(nearest + 1e-6);
}

/** The greatest multiple of 1e-6 that is not above `x`: for room, which must never be overstated. */
export const roundDown6 = (x: number): number => 0 - roundUp6(0 - x);

/** A point (mm) as an answer gives it. */
export const roundPoint6 = (p: Vec): [number, number] => [round6(p.x), round6(p.y)];
