import type { Source } from './sourced.ts';

/** Lower and upper deviation from the nominal diameter, µm. */
export type Limits = readonly [lowerUm: number, upperUm: number];

export interface FitClass {
  readonly source: Source;
  /** Limits for nominal diameters of 8–10 mm and of 12–16 mm. */
  readonly small: Limits;
  readonly large: Limits;
}

const read: Source = { basis: 'looked up', from: 'ISO 286' };
const remembered: Source = { basis: 'from memory', from: 'ISO 286' };

/** The classes met on dowels: H7 holes and the pins that go in them. */
export const dowelClasses = {
  H7: { source: read, small: [0, 15], large: [0, 18] },
  m6: { source: read, small: [6, 15], large: [7, 18] },
  h6: { source: read, small: [-9, 0], large: [-11, 0] },
  g6: { source: remembered, small: [-14, -5], large: [-17, -6] },
} as const satisfies Record<string, FitClass>;

/** Most and least clearance (µm; negative is interference) of a pin in a hole: computed from their limits. */
export const clearanceUm = (hole: Limits, pin: Limits): { readonly most: number; readonly least: number } => ({
  most: hole[1] - pin[0],
  least: hole[0] - pin[1],
});
