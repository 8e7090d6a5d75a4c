/** How far a long job has come; yielded by generators so that a terminal or a worker can show it, and stop. */
export interface Progress {
  readonly step: string;
  readonly done: number;
  readonly of: number;
}

/** Runs a job to its end without showing its progress. */
export function drain<T>(job: Generator<Progress, T>): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
