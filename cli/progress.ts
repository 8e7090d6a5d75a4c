import type { Progress } from '../src/geometry/progress.ts';

const showAfterMs = 1000;
/** How often the line is written anew. */
const redrawMs = 40;

/** Runs a long job to its end; past a second, and only on a terminal, shows on standard error how far it has come. */
export function runShowingProgress<T>(job: Generator<Progress, T>): T {
  const line = new ProgressLine();
  try {
    for (;;) {
      const step = job.next();
      if (step.done) return step.value;
      line.show(step.value);
    }
  } finally {
    line.clear();
  }
}

class ProgressLine {
  readonly #started = performance.now();
  #drawn = this.#started;
  #shown = false;

  show({ step, done, of }: Progress): void {
    if (!process.stderr.isTTY) return;
    const now = performance.now();
    if (now - this.#started < showAfterMs || now - this.#drawn < redrawMs) return;
    this.#drawn = now;
    process.stderr.write(`\r\x1b[K${step}  ${done} of ${of}`);
    this.#shown = true;
  }

  clear(): void {
    if (this.#shown) process.stderr.write('\r\x1b[K');
  }
}
