import type { Bench } from '../bench.ts';

/** `refused`: the tool holds that no cut will do, and nothing is ground. `gave-up`: too many goes. */
export type Ending = 'done' | 'refused' | 'gave-up';

/** What the tool said of a cut, and of which go, counted from the first cut. */
export interface Said {
  readonly ofGo: number;
  /** What is left keeps the asked clearance, as traced. */
  readonly holds: boolean;
  /** What is left clears with every error at its worst, the hand's among them. */
  readonly clearsAtWorst: boolean;
}

export interface Outcome {
  readonly ending: Ending;
  /** Null where no tool was asked. */
  readonly said: Said | null;
}

/**
 * How a builder goes about it. He has `bench.traced` to plan on, grinds by `bench.grindToLine` or at marks, and learns of
 * the castings by `bench.offerUp` alone: where it stops, and what he reads there.
 */
export type Strategy = (bench: Bench) => Outcome;
