/** How far a long job has come; yielded by generators so that a terminal or a worker can show it, and stop. */
export interface Progress {
  readonly step: string;
  readonly done: number;
  readonly of: number;
}

/** Runs a job that only says where it may be left, and shows the same progress before it and wherever it does. */
export function* showing<T>(progress: Progress, job: Generator<void, T>): Generator<Progress, T> {
  for (;;) {
    yield progress;
    const step = job.next();
    if (step.done) return step.value;
  }
}

/**
 * Runs a job to its end without showing its progress, and gives its result; what the job throws is thrown. Who wants to show
 * how far it has come, or to stop, asks the generator step by step instead.
 *
 * @example The check of an adapter, once step by step and once to its end.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, drain, readJob } from 'fettle';
 *
 * const fit = 'profiles/sae-3-adapter/adapter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { check } = found.value;
 * const first = check().next();
 * console.log(first.done ? 'done' : first.value.step); // home
 * console.log(drain(check()).verdict); // goes
 * ```
 */
export function drain<T>(job: Generator<Progress, T>): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
