const budgetMs = 600;
const warmUpMs = 60;
const sampleMs = 1;
/** A run this long needs no warming up: its first time counts. */
const longMs = 1000;
const [fewestRounds, mostRounds] = [3, 25];

interface Runner {
  readonly run: () => unknown;
  /** Runs timed together, so that the clock's grain and its own cost vanish. */
  readonly batch: number;
  readonly samples: number[];
}

/**
 * The median time in ms of one run of each of `runs`.
 *
 * They take turns, a batch of each per round, so that whatever else the machine does falls on all of them alike; each
 * is first run until it is compiled. Rounds go on until the budget is spent, or for exactly `rounds`.
 */
export function interleavedMedians(runs: readonly (() => unknown)[], rounds?: number): number[] {
  const runners = runs.map(warmUp);
  const began = performance.now();
  for (let round = 0; isDue(round, performance.now() - began, rounds); round++) {
    for (const runner of round % 2 === 0 ? runners : runners.toReversed()) runner.samples.push(timeOf(runner));
  }
  return runners.map(({ samples }) => medianOf(samples));
}

const isDue = (round: number, spentMs: number, rounds: number | undefined): boolean =>
  rounds === undefined ? round < fewestRounds || (round < mostRounds && spentMs < budgetMs) : round < rounds;

function warmUp(run: () => unknown): Runner {
  let quickestMs = Number.POSITIVE_INFINITY;
  for (let spentMs = 0; spentMs < warmUpMs; ) {
    const ms = timeOf({ run, batch: 1 });
    quickestMs = Math.min(quickestMs, ms);
    spentMs += ms;
  }
  const batch = Math.max(1, Math.ceil(sampleMs / quickestMs));
  return { run, batch, samples: quickestMs > longMs ? [quickestMs] : [] };
}

function timeOf({ run, batch }: Pick<Runner, 'run' | 'batch'>): number {
  const began = performance.now();
  for (let i = 0; i < batch; i++) run();
  return (performance.now() - began) / batch;
}

export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}
