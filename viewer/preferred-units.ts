import type { Units } from '../src/job/lengths.ts';

const key = 'fettle lengths in';

/** The unit the builder chose on this machine to read lengths in; null where he chose none, or nothing is kept here. */
export function preferredUnits(): Units | null {
  try {
    const kept = localStorage.getItem(key);
    return kept === 'mm' || kept === 'in' ? kept : null;
  } catch {
    return null;
  }
}

/** Keeps that choice where the browser keeps anything; null takes it back. */
export function preferUnits(units: Units | null): void {
  try {
    if (units === null) localStorage.removeItem(key);
    else localStorage.setItem(key, units);
  } catch {
    // it holds as long as the page is open
  }
}
