import type { Source } from './sourced.ts';
import { minorDiameterMm } from './threads.ts';

/** What the tapped hole for a wire thread insert measures, mm. */
export interface InsertHole {
  readonly majorMm: number;
  readonly minorMm: number;
  /** The minor diameter to the next tenth above. */
  readonly drillMm: number;
  readonly source: Source;
}

const source: Source = { basis: 'computed', from: 'the thread by ISO 724, larger all round by its sharp wire, ¾ H' };

/**
 * The hole for an insert that carries the thread of `majorMm` and `pitchMm`: the wire is as high as the thread's flanks,
 * so that the hole is that thread larger by 1.5 H = 1.299 P in diameter.
 */
export function insertHole(majorMm: number, pitchMm: number): InsertHole {
  const wireMm = 0.75 * Math.sqrt(3) * pitchMm;
  const minorMm = minorDiameterMm(majorMm, pitchMm) + wireMm;
  return { majorMm: majorMm + wireMm, minorMm, drillMm: Math.ceil(minorMm * 10 - 1e-9) / 10, source };
}
