export type Units = 'mm' | 'in';

const mmPerInch = 25.4;

/** A number with so many decimals, and no minus before nothing. */
export function figure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Decimals that a hand-traced outline can answer for: 0.1 mm, a hundredth of an inch. */
const tracedDecimals = { mm: 1, in: 2 } as const;

/** Millimetres in one of the units. */
export const mmIn = (units: Units): number => (units === 'mm' ? 1 : mmPerInch);

const inUnits = (mm: number, units: Units): number => (units === 'mm' ? mm : mm / mmPerInch);

/** A length as a builder reads it off a traced outline. */
export const lengthText = (mm: number, units: Units): string =>
  `${figure(inUnits(mm, units), tracedDecimals[units])} ${units}`;

/** A clearance is held to this, so closer than this to its limit it is at its limit. */
const heldToMm = 1e-3;
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

/** A length given, not measured: every digit its giver wrote, to a hundredth of a millimetre; without its unit. */
export const bareGivenLength = (mm: number, units: Units): string =>
  String(Number(inUnits(mm, units).toFixed(units === 'mm' ? 2 : 3)) + 0);

export const givenLength = (mm: number, units: Units): string => `${bareGivenLength(mm, units)} ${units}`;

export const areaText = (mm2: number, units: Units): string =>
  units === 'mm' ? `${figure(mm2, mm2 < 10 ? 1 : 0)} mm²` : `${figure(mm2 / mmPerInch ** 2, 2)} in²`;

export const volumeText = (mm3: number, units: Units): string =>
  units === 'mm' ? `${figure(mm3 / 1000, 1)} cm³` : `${figure(mm3 / mmPerInch ** 3, 2)} in³`;

export const massText = (grams: number): string => `${figure(grams, grams < 100 ? 1 : 0)} g`;

export const degreesText = (degrees: number): string => `${figure(degrees, 1)}°`;

/** A length between machined holes, which calipers tell finer than a tracing does. */
export const fineLength = (mm: number, units: Units): string =>
  `${figure(inUnits(mm, units), units === 'mm' ? 2 : 3)} ${units}`;
