import type { Source } from './sourced.ts';

/** Diameters of the clearance holes for one metric size, mm. */
export interface ClearanceHole {
  readonly majorMm: number;
  readonly fineMm: number;
  readonly mediumMm: number;
  readonly coarseMm: number;
  readonly source: Source;
}

const read: Source = { basis: 'looked up', from: 'ISO 273' };
const remembered: Source = { basis: 'from memory', from: 'ISO 273' };

const hole = (
  majorMm: number,
  fineMm: number,
  mediumMm: number,
  coarseMm: number,
  source: Source = read,
): ClearanceHole => ({ majorMm, fineMm, mediumMm, coarseMm, source });

const clearanceHoles: readonly ClearanceHole[] = [
  hole(3, 3.2, 3.4, 3.6, remembered),
  hole(3.5, 3.7, 3.9, 4.2, remembered),
  hole(4, 4.3, 4.5, 4.8, remembered),
  hole(5, 5.3, 5.5, 5.8),
  hole(6, 6.4, 6.6, 7),
  hole(7, 7.4, 7.6, 8, remembered),
  hole(8, 8.4, 9, 10),
  hole(10, 10.5, 11, 12),
  hole(12, 13, 13.5, 14.5),
  hole(14, 15, 15.5, 16.5),
  hole(16, 17, 17.5, 18.5),
  hole(18, 19, 20, 21, remembered),
  hole(20, 21, 22, 24, remembered),
  hole(22, 23, 24, 26, remembered),
  hole(24, 25, 26, 28, remembered),
];

/** The clearance holes for a thread of `majorMm`, or null where the table has no such size. */
export const clearanceHoleFor = (majorMm: number): ClearanceHole | null =>
  clearanceHoles.find((h) => h.majorMm === majorMm) ?? null;
