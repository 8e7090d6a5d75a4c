import { type BenchForm, type Entries, noEntries } from './bench-entries.ts';

const keyOf = (form: BenchForm): string => `fettle bench ${form}`;

/** What was typed into a form of the bench on this machine; none where nothing is kept here. */
export function keptEntries(form: BenchForm): Entries {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(form)) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return noEntries;
    return Object.fromEntries(Object.entries(kept).filter(([, text]) => typeof text === 'string'));
  } catch {
    return noEntries;
  }
}

/** Keeps that where the browser keeps anything. */
export function keepEntries(form: BenchForm, entries: Entries): void {
  try {
    localStorage.setItem(keyOf(form), JSON.stringify(entries));
  } catch {
    // it holds as long as the page is open
  }
}
