import { figure, fineLength, inUnits, lengthText, mmIn, tracedDecimals } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';

/** A clearance is held to this, so closer than this to its limit it is at its limit. */
export const heldToMm = 1e-3;
const finestDecimals = 4;

/**
 * A length that is held against a limit: rounded as the tracing allows, but with as many decimals as it takes for
 * the rounded figures to still say which is the larger.
 */
export function comparedText(mm: number, limitMm: number, units: Units): string {
  if (Math.abs(mm - limitMm) <= heldToMm) return lengthText(mm, units);
  const rounded = (value: number, decimals: number): number => Number(figure(inUnits(value, units), decimals));
  const tells = (decimals: number): boolean =>
    Math.sign(rounded(mm, decimals) - rounded(limitMm, decimals)) === Math.sign(mm - limitMm);
  let decimals: number = tracedDecimals[units];
  while (decimals < finestDecimals && !tells(decimals)) decimals += 1;
  return `${figure(inUnits(mm, units), decimals)} ${units}`;
}

export const areaText = (mm2: number, units: Units): string =>
  units === 'mm' ? `${figure(mm2, mm2 < 10 ? 1 : 0)} mm²` : `${figure(mm2 / mmIn(units) ** 2, 2)} in²`;

export const volumeText = (mm3: number, units: Units): string =>
  units === 'mm' ? `${figure(mm3 / 1000, 1)} cm³` : `${figure(mm3 / mmIn(units) ** 3, 2)} in³`;

export const massText = (grams: number): string => `${figure(grams, grams < 100 ? 1 : 0)} g`;

/** What comes off, weighed where its material is known. */
export function weighedText(mm3: number, grams: number | null, units: Units): string {
  const volume = volumeText(mm3, units);
  return grams === null ? volume : `${massText(grams)} (${volume})`;
}

export const degreesText = (degrees: number): string => `${figure(degrees, 1)}°`;

export const turnText = (rad: number): string => degreesText(degreesOf(rad));

/** A turn as holes tell it, to a hundredth of a degree. */
export const fineTurnText = (rad: number): string => `${figure(degreesOf(rad), 2)}°`;

export const degreesOf = (rad: number): number => (rad * 180) / Math.PI;

/** A length between machined edges, in mm. */
export const fineMm = (mm: number): string => fineLength(mm, 'mm');

/** A share of 1 as `88 %`. */
export const percentText = (share: number): string => `${figure(100 * share, 0)} %`;
