import { interleaved } from './interleaved.ts';

/** The same question put to our own code and to others. */
export interface Contest {
  /** Edges of each of the two outlines; null where that says nothing. */
  readonly edges: number | null;
  /** Each does the work and returns the figure it comes to, by which the answers are compared. */
  readonly runs: Readonly<Record<string, () => number>>;
  /** By how much the figures may differ; `Infinity` where the runs are asked different things. */
  readonly within: number;
  /** How many questions one run answers; times are given for one. */
  readonly questions?: number;
  readonly rounds?: number;
  /** Which runs to set against one another; `atLeast` is the ratio that must be reached. */
  readonly cases: readonly { name: string; ours: string; peer: string; atLeast?: number }[];
}

/** A figure of the benchmark: medians in ms, and how many times as long the peer takes. */
export interface BenchCase {
  readonly name: string;
  readonly edges: number | null;
  readonly oursMs: number;
  readonly peer: string;
  readonly peerMs: number;
  readonly ratio: number;
  readonly atLeast: number | null;
}

/** Times the runs of a contest in turns; throws where they do not agree on the answer. */
export function hold({ edges, runs, within, questions = 1, rounds, cases }: Contest): BenchCase[] {
  const names = Object.keys(runs);
  const timed = new Map(interleaved(Object.values(runs), rounds).map((result, i) => [names[i] as string, result]));
  const resultOf = (name: string) => {
    const result = timed.get(name);
    if (result === undefined) throw new Error(`the contest has no run ${name}`);
    return result;
  };
  return cases.map(({ name, ours, peer, atLeast = null }) => {
    const [mine, other] = [resultOf(ours), resultOf(peer)];
    const difference = Math.abs(mine.figure - other.figure);
    if (!(difference <= within)) throw new Error(`${name}, ${edges} edges: ${peer} differs by ${difference}`);
    const [oursMs, peerMs] = [mine.medianMs / questions, other.medianMs / questions];
    return { name, edges, oursMs, peer, peerMs, ratio: peerMs / oursMs, atLeast };
  });
}
