const warmUpMs = 100;
/** One that takes longer than that all at once is called so often, or for so long, before it counts as compiled. */
const warmUpCalls = 10;
const mostWarmUpMs = 2000;
/** Calls are timed in batches this long at least, so that the clock's grain and its own cost vanish. */
const batchMs = 1;
/** A round goes on with one run for this long, or for one batch. */
const turnMs = 25;
/** A call this long needs no warming up: its first time counts. */
const longMs = 1000;
const budgetMs = 600;
const [fewestRounds, mostRounds] = [3, 25];
/** What one run may take in all before it sits further rounds out, where their number is not given. */
const patienceMs = 6000;

export interface Timing {
  readonly medianMs: number;
  /** What the run returned. */
  readonly figure: number;
}

interface Runner {
  readonly run: () => number;
  readonly figure: number;
  readonly batch: number;
  readonly samples: number[];
  spentMs: number;
}

/**
 * The median time of one call of each of `runs`.
 *
 * They take turns, every other round in reverse, so that whatever else the machine does falls on all of them alike;
 * each is first called until it is compiled. Rounds go on until the budget is spent, or for exactly `rounds`.
 */
export function interleaved(runs: readonly (() => number)[], rounds?: number): Timing[] {
  const runners = runs.map(warmUp);
  const began = performance.now();
  for (let round = 0; isDue(round, performance.now() - began, rounds); round++) {
    for (const runner of round % 2 === 0 ? runners : runners.toReversed()) {
      if (rounds !== undefined || runner.spentMs <= patienceMs || runner.samples.length === 0) takeTurn(runner);
    }
  }
  return runners.map(({ samples, figure }) => ({ medianMs: medianOf(samples), figure }));
}

const isDue = (round: number, spentMs: number, rounds: number | undefined): boolean =>
  rounds === undefined ? round < fewestRounds || (round < mostRounds && spentMs < budgetMs) : round < rounds;

function warmUp(run: () => number): Runner {
  let quickestMs = Number.POSITIVE_INFINITY;
  let figure = 0;
  const isCold = (calls: number, spentMs: number): boolean =>
    spentMs < warmUpMs || (calls < warmUpCalls && spentMs < mostWarmUpMs);
  for (let calls = 0, spentMs = 0; isCold(calls, spentMs); calls++) {
    const began = performance.now();
    figure = run();
    const ms = performance.now() - began;
    quickestMs = Math.min(quickestMs, ms);
    spentMs += ms;
  }
  const batch = Math.max(1, Math.ceil(batchMs / quickestMs));
  const first = quickestMs > longMs ? [quickestMs] : [];
  return { run, figure, batch, samples: first, spentMs: first[0] ?? 0 };
}

function takeTurn(runner: Runner): void {
  const { run, batch, samples } = runner;
  for (const endMs = runner.spentMs + turnMs; runner.spentMs < endMs; ) {
    const began = performance.now();
    for (let i = 0; i < batch; i++) run();
    const ms = performance.now() - began;
    runner.spentMs += ms;
    samples.push(ms / batch);
  }
}

export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}
