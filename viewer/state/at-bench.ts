import { type Signal, signal } from '@preact/signals';
import type { Units } from '../../src/job/lengths.ts';
import type { Core } from '../core.ts';
import type { BenchTold } from '../heavy/at-bench.ts';
import { type BenchForm, benchForms, type Entries, noEntries, questionOf } from '../job/bench-entries.ts';
import { keepEntries, keptEntries } from '../job/kept-entries.ts';

/** What is worked out at the bench, of no job: what was typed outlasts the page, and is asked anew with every change. */
export class AtBench {
  readonly #entries: Readonly<Record<BenchForm, Signal<Entries>>> = forEach((form) => signal(keptEntries(form)));
  readonly #told: Readonly<Record<BenchForm, Signal<BenchTold | null>>> = forEach(() => signal<BenchTold | null>(null));
  readonly #live: Core;

  constructor(live: Core) {
    this.#live = live;
  }

  entriesOf(form: BenchForm): Entries {
    return this.#entries[form].value;
  }

  /** What was said last of what is typed now; null where too little is. */
  toldOf(form: BenchForm): BenchTold | null {
    return this.#told[form].value;
  }

  /** Takes over what was typed into a field; empty takes it out. */
  enter(form: BenchForm, field: string, text: string): void {
    const { [field]: _, ...others } = this.#entries[form].peek();
    this.#set(form, text === '' ? others : { ...others, [field]: text });
  }

  clear(form: BenchForm): void {
    this.#set(form, noEntries);
  }

  #set(form: BenchForm, entries: Entries): void {
    this.#entries[form].value = entries;
    keepEntries(form, entries);
  }

  /** Asks of what is typed now, lengths along the crank told in a unit. */
  ask(form: BenchForm, units: Units): void {
    const entries = this.#entries[form].peek();
    const asked = questionOf(form, entries, units);
    if (asked === null) {
      this.#told[form].value = null;
      return;
    }
    // an answer to what stood there before is heard no more
    this.#live.ask({ kind: 'bench', asked }, null, (reply) => {
      if (reply.kind === 'bench-told' && this.#entries[form].peek() === entries) this.#told[form].value = reply.told;
    });
  }
}

const forEach = <T>(make: (form: BenchForm) => T): Readonly<Record<BenchForm, T>> =>
  Object.fromEntries(benchForms.map((form) => [form, make(form)])) as Record<BenchForm, T>;
