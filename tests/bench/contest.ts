import { interleavedMedians } from './interleaved-medians.ts';

/** One side of a contest; `run` does the work and returns the figure it comes to, by which the sides are compared. */
export interface Contender {
  readonly name: string;
  readonly run: () => number;
}

/** The same question put to our own code and to others. */
export interface Contest {
  readonly name: string;
  /** Edges of each of the two outlines; null where that says nothing. */
  readonly edges: number | null;
  readonly ours: Contender['run'];
  /** `atLeast`: the ratio that must be reached. */
  readonly peers: readonly (Contender & { readonly atLeast?: number })[];
  /** By how much the answers may differ; `Infinity` where the sides are asked different things. */
  readonly within: number;
  /** How many questions one run answers; times are given for one. */
  readonly questions?: number;
  readonly rounds?: number;
}

/** A figure of the benchmark: medians in ms, and how many times as long the peer takes. */
export interface BenchCase {
  readonly name: string;
  readonly edges: number | null;
  readonly oursMs: number;
  readonly peer: string | null;
  readonly peerMs: number | null;
  readonly ratio: number | null;
  readonly atLeast: number | null;
}

/** Runs a contest: one case a peer, all timed in turns; throws where the sides do not agree on the answer. */
export function hold({ name, edges, ours, peers, within, questions = 1, rounds }: Contest): BenchCase[] {
  const answer = ours();
  for (const peer of peers) {
    const difference = Math.abs(peer.run() - answer);
    if (!(difference <= within)) throw new Error(`${name}, ${edges} edges: ${peer.name} differs by ${difference}`);
  }
  const [oursMs = 0, ...theirs] = interleavedMedians([ours, ...peers.map((peer) => peer.run)], rounds).map(
    (ms) => ms / questions,
  );
  if (peers.length === 0) return [{ name, edges, oursMs, peer: null, peerMs: null, ratio: null, atLeast: null }];
  return peers.map((peer, i) => {
    const peerMs = theirs[i] as number;
    return { name, edges, oursMs, peer: peer.name, peerMs, ratio: peerMs / oursMs, atLeast: peer.atLeast ?? null };
  });
}
