import type { Source } from './sourced.ts';

/** Diameters of the clearance holes for one metric size, mm. */
export interface ClearanceHole {
  readonly majorMm: number;
  readonly fineMm: number;
  readonly mediumMm: number;
  readonly coarseMm: number;
  readonly source: Source;
}

const iso273: Source = { basis: 'looked up', from: 'ISO 273' };

const hole = (majorMm: number, fineMm: number, mediumMm: number, coarseMm: number): ClearanceHole => ({
  majorMm,
  fineMm,
  mediumMm,
  coarseMm,
  source: iso273,
});

const clearanceHoles: readonly ClearanceHole[] = [
  hole(5, 5.3, 5.5, 5.8),
  hole(6, 6.4, 6.6, 7),
  hole(8, 8.4, 9, 10),
  hole(10, 10.5, 11, 12),
  hole(12, 13, 13.5, 14.5),
  hole(14, 15, 15.5, 16.5),
  hole(16, 17, 17.5, 18.5),
];

/** The clearance holes for a thread of `majorMm`, or null where the table has no such size. */
export const clearanceHoleFor = (majorMm: number): ClearanceHole | null =>
  clearanceHoles.find((h) => h.majorMm === majorMm) ?? null;
