import type { Basis, Source } from './sourced.ts';

export interface MetricThread {
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly coarse: boolean;
  readonly tappingDrillMm: number;
  readonly drillSource: Source;
}

const read = 'looked up';
const practice = 'common practice';

/** Coarse threads, mm: major diameter, pitch, tapping drill; the drill is from memory where nothing else stands. */
const coarse: readonly (readonly [majorMm: number, pitchMm: number, drillMm: number, basis?: Basis])[] = [
  [3, 0.5, 2.5],
  [3.5, 0.6, 2.9],
  [4, 0.7, 3.3],
  [5, 0.8, 4.2],
  [6, 1, 5],
  [7, 1, 6],
  [8, 1.25, 6.8],
  [9, 1.25, 7.8],
  [10, 1.5, 8.5],
  [11, 1.5, 9.5],
  [12, 1.75, 10.2],
  [14, 2, 12],
  [16, 2, 14],
  [18, 2.5, 15.5],
  [20, 2.5, 17.5],
  [22, 2.5, 19.5],
  [24, 3, 21],
];

/** Fine threads, in the same way. */
const fine: typeof coarse = [
  [3, 0.35, 2.65],
  [4, 0.5, 3.5],
  [5, 0.5, 4.5],
  [6, 0.75, 5.2],
  [7, 0.75, 6.2],
  [8, 1, 7],
  [8, 0.75, 7.2],
  [9, 1, 8],
  [10, 1.25, 8.8, read],
  [10, 1, 9],
  [11, 1.25, 9.75, practice],
  [11, 1, 10],
  [12, 1.5, 10.5, read],
  [12, 1.25, 10.8, read],
  [12, 1, 11],
  [14, 1.5, 12.5],
  [14, 1.25, 12.8],
  [14, 1, 13],
  [16, 1.5, 14.5],
  [16, 1, 15],
  [18, 2, 16],
  [18, 1.5, 16.5],
  [18, 1, 17],
  [20, 2, 18],
  [20, 1.5, 18.5],
  [20, 1, 19],
  [22, 2, 20],
  [22, 1.5, 20.5],
  [22, 1, 21],
  [24, 2, 22],
  [24, 1.5, 22.5],
  [24, 1, 23],
];

/**
 * The metric threads met on engines and gearboxes, by size and then by pitch, coarsest first. Which pitches a size has,
 * and which of them is the coarse one: from memory of ISO 261. Drills are those of ISO 2306, or common practice.
 */
export const metricThreads: readonly MetricThread[] = [
  ...coarse.map((row) => ({ row, isCoarse: true })),
  ...fine.map((row) => ({ row, isCoarse: false })),
]
  .map(({ row: [majorMm, pitchMm, tappingDrillMm, basis = 'from memory'], isCoarse }) => ({
    majorMm,
    pitchMm,
    coarse: isCoarse,
    tappingDrillMm,
    drillSource: { basis, from: basis === practice ? '' : 'ISO 2306' },
  }))
  .sort((a, b) => a.majorMm - b.majorMm || b.pitchMm - a.pitchMm);
