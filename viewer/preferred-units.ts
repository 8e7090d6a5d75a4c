import type { Units } from '../src/job/lengths.ts';
import { keepText, keptText } from './kept-text.ts';

const name = 'fettle lengths in';

/** The unit the builder chose on this machine to read lengths in; null where he chose none, or nothing is kept here. */
export function preferredUnits(): Units | null {
  const kept = keptText(name);
  return kept === 'mm' || kept === 'in' ? kept : null;
}

/** Keeps that choice where the browser keeps anything; null takes it back. */
export const preferUnits = (units: Units | null): void => keepText(name, units);
