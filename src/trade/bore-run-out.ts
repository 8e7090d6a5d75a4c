import type { Source } from './sourced.ts';

/** Full indicator movement that a bore may have about the crank, mm. */
export interface RunOutLimit {
  readonly tirMm: number;
  readonly source: Source;
}

/** 0.005 in: what a passenger car's gearbox bore may run out. */
export const gearboxBoreRunOut: RunOutLimit = { tirMm: 0.127, source: { basis: 'looked up', from: 'workshop texts' } };

/** What a graduation of a common dial is worth, mm: common practice, no source. */
export const dialErrorMm = 0.01;

/** How far the eccentric dowels that are commonly sold move a housing, in inches. */
export const offsetDowelsIn = [0.007, 0.014, 0.021] as const;

export const offsetDowelSource: Source = { basis: 'from memory', from: 'workshop practice' };
