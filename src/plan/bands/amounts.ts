import type { DepthRange } from '../../job/casting.ts';

/** The volume of an area through a range of depth, mm³; null where it has none. */
export const layerMm3 = (areaMm2: number, depth: DepthRange | null): number | null =>
  depth === null ? null : areaMm2 * (depth.toMm - depth.fromMm);

/** All of some amounts; null where one of them is not known. */
export const sumKnown = (amounts: readonly (number | null)[]): number | null =>
  amounts.reduce((total, amount) => (total === null || amount === null ? null : total + amount), 0);
