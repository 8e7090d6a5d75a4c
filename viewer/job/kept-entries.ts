import { keepText, keptText } from '../kept-text.ts';
import { type BenchForm, type Entries, noEntries } from './bench-entries.ts';

const nameOf = (form: BenchForm): string => `fettle bench ${form}`;

/** What was typed into a form of the bench on this machine; none where nothing is kept here, or what is not its own. */
export function keptEntries(form: BenchForm): Entries {
  const text = keptText(nameOf(form));
  if (text === null) return noEntries;
  try {
    const kept: unknown = JSON.parse(text);
    if (typeof kept !== 'object' || kept === null) return noEntries;
    return Object.fromEntries(Object.entries(kept).filter(([, value]) => typeof value === 'string'));
  } catch {
    return noEntries;
  }
}

export const keepEntries = (form: BenchForm, entries: Entries): void => keepText(nameOf(form), JSON.stringify(entries));
