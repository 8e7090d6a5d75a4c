import type { Progress } from '../geometry/progress.ts';

/** A piece of work on the way from a job to its answers; yields its progress, so that it can be shown and dropped. */
export type Stage<T> = () => Generator<Progress, T>;

/**
 * A stage worked out once. Who asks again has its result at once; who asks after it was dropped goes on where it was
 * left; two that ask at the same time share the work. Where it throws, it is begun anew by whoever asks next.
 */
export function once<T>(begin: Stage<T>): Stage<T> {
  let work: Generator<Progress, T> | null = null;
  let done: { readonly value: T } | null = null;
  return function* () {
    while (done === null) {
      work ??= begin();
      let step: IteratorResult<Progress, T>;
      try {
        step = work.next();
      } catch (error) {
        work = null;
        throw error;
      }
      if (step.done) done = step;
      else yield step.value;
    }
    return done.value;
  };
}
