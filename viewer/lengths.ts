import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { mmIn } from '../src/job/length-text.ts';
import type { Units } from '../src/job/lengths.ts';

/** A number as someone writes it, with a point or a comma; null where it is none. */
export function numberIn(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? null : value;
}

/** How a number of a file stands in a field, and what is typed there stands in the file. */
export interface Figures {
  /** Said after the figure; empty where there is nothing to say. */
  readonly unit: string;
  /** Empty where there is no value. */
  readonly text: (value: number | undefined) => string;
  /** Null where it is no number. What says the same as the value that was shown is that value, to its last digit. */
  readonly read: (text: string, was?: number) => number | null;
}

/** Numbers that are the same in every unit: angles in degrees, bulges. */
export const plainFigures = (unit = '', decimals = 9): Figures => {
  const text = (value: number | undefined): string =>
    value === undefined ? '' : String(Number(value.toFixed(decimals)) + 0);
  return { unit, text, read: (typed, was) => keptOr(typed, was, text, (number) => number) };
};

/** Lengths of a file with units of its own, read and typed in the unit shown. */
export function lengthsIn(file: Units, shown: Units): Figures {
  const factor = mmIn(file) / mmIn(shown);
  const text = (value: number | undefined): string => (value === undefined ? '' : shownLength(value * factor, shown));
  const inFile = (number: number): number =>
    // beyond the tenth digit there is only what the division left
    file === shown ? number : Number((number / factor).toPrecision(10));
  return { unit: shown, text, read: (typed, was) => keptOr(typed, was, text, inFile) };
}

/** To a micron or four places of an inch, no more than was set. */
const shownLength = (value: number, units: Units): string => String(Number(value.toFixed(units === 'mm' ? 3 : 4)) + 0);

function keptOr(
  typed: string,
  was: number | undefined,
  text: Figures['text'],
  inFile: (number: number) => number,
): number | null {
  const number = numberIn(typed);
  if (number === null) return null;
  return was !== undefined && number === Number(text(was)) ? was : inFile(number);
}

/** The unit the builder chose to read lengths in; null shows each file in its own. */
export const ShownUnits = createContext<Units | null>(null);

/** Lengths of a file, in the unit that is shown. */
export const useLengths = (file: Units): Figures => lengthsIn(file, useContext(ShownUnits) ?? file);
