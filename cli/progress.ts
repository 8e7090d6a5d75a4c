import type { Progress } from '../src/geometry/progress.ts';

const showAfterMs = 1000;
/** How often a long job lets the terminal breathe: signals are heard and the line is redrawn then. */
const breatheMs = 40;

/** Runs a long job to its end; past a second, and only on a terminal, shows on standard error how far it has come. */
export async function runShowingProgress<T>(job: Generator<Progress, T>): Promise<T> {
  const line = new ProgressLine();
  let breathed = performance.now();
  try {
    for (;;) {
      const step = job.next();
      if (step.done) return step.value;
      if (performance.now() - breathed < breatheMs) continue;
      line.show(step.value);
      await new Promise((resume) => setImmediate(resume));
      breathed = performance.now();
    }
  } finally {
    line.clear();
  }
}

class ProgressLine {
  readonly #started = performance.now();
  #shown = false;

  show({ step, done, of }: Progress): void {
    if (!process.stderr.isTTY || performance.now() - this.#started < showAfterMs) return;
    process.stderr.write(`\r\x1b[K${step}  ${done} of ${of}`);
    this.#shown = true;
  }

  clear(): void {
    if (this.#shown) process.stderr.write('\r\x1b[K');
  }
}
