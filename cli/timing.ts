import type { Progress } from '../src/geometry/progress.ts';

/** What the parts of a check took, ms; `installMs` takes in every leg of the way in and the rotating parts. */
export interface Timing {
  readonly readMs: number;
  readonly dowelUpMs: number;
  readonly homeMs: number;
  readonly installMs: number;
}

/** The value of a piece of work, and what it took in ms. */
export function timed<T>(work: () => T): { readonly value: T; readonly ms: number } {
  const started = performance.now();
  const value = work();
  return { value, ms: performance.now() - started };
}

/** Passes a check's progress on and adds up the time of its steps: home first, then all the rest. */
export function* timedCheck<T>(
  job: Generator<Progress, T>,
): Generator<Progress, { readonly value: T; readonly homeMs: number; readonly installMs: number }> {
  let homeMs = 0;
  let installMs = 0;
  for (let step = ''; ; ) {
    const next = timed(() => job.next());
    if (step === '' || step === 'home') homeMs += next.ms;
    else installMs += next.ms;
    if (next.value.done) return { value: next.value.value, homeMs, installMs };
    step = next.value.value.step;
    yield next.value.value;
  }
}
