import type { Units } from './lengths.ts';

const mmPerInch = 25.4;

/** A number with so many decimals, and no minus before nothing. */
export function figure(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Decimals that a hand-traced outline can answer for: 0.1 mm, a hundredth of an inch. */
export const tracedDecimals = { mm: 1, in: 2 } as const;

/** Millimetres in one of the units. */
export const mmIn = (units: Units): number => (units === 'mm' ? 1 : mmPerInch);

export const inUnits = (mm: number, units: Units): number => (units === 'mm' ? mm : mm / mmPerInch);

/** A length as a builder reads it off a traced outline. */
export const lengthText = (mm: number, units: Units): string =>
  `${figure(inUnits(mm, units), tracedDecimals[units])} ${units}`;

/** A length given, not measured: every digit its giver wrote, to a hundredth of a millimetre; without its unit. */
export const bareGivenLength = (mm: number, units: Units): string =>
  String(Number(inUnits(mm, units).toFixed(units === 'mm' ? 2 : 3)) + 0);

export const givenLength = (mm: number, units: Units): string => `${bareGivenLength(mm, units)} ${units}`;

/** A length between machined holes, which calipers tell finer than a tracing does. */
export const fineLength = (mm: number, units: Units): string =>
  `${figure(inUnits(mm, units), units === 'mm' ? 2 : 3)} ${units}`;
