import { inchDrillNamed } from './inch-drills.ts';
import type { Source } from './sourced.ts';

/** A unified inch thread; the drill is one of `inchDrills`. */
export interface UnifiedThread {
  /** As in `3/8`, or `#10` for a numbered size. */
  readonly size: string;
  readonly majorMm: number;
  readonly perInch: number;
  readonly series: 'UNC' | 'UNF';
  readonly drill: string;
  readonly drillSource: Source;
}

const remembered: Source = { basis: 'from memory', from: 'drill tables for about 75 % of thread' };

/** Size, major diameter in inches, then threads per inch and tapping drill, coarse and fine: ASME B1.1, from memory. */
const table = [
  ['#4', 0.112, 40, '#43', 48, '#42'],
  ['#5', 0.125, 40, '#38', 44, '#37'],
  ['#6', 0.138, 32, '#36', 40, '#33'],
  ['#8', 0.164, 32, '#29', 36, '#29'],
  ['#10', 0.19, 24, '#25', 32, '#21'],
  ['#12', 0.216, 24, '#16', 28, '#14'],
  ['1/4', 1 / 4, 20, '#7', 28, '#3'],
  ['5/16', 5 / 16, 18, 'F', 24, 'I'],
  ['3/8', 3 / 8, 16, '5/16', 24, 'Q'],
  ['7/16', 7 / 16, 14, 'U', 20, '25/64'],
  ['1/2', 1 / 2, 13, '27/64', 20, '29/64'],
  ['9/16', 9 / 16, 12, '31/64', 18, '33/64'],
  ['5/8', 5 / 8, 11, '17/32', 18, '37/64'],
  ['3/4', 3 / 4, 10, '21/32', 16, '11/16'],
] as const;

/** Unified threads from #4 to ¾ in, coarse and fine, smallest first. */
export const unifiedThreads: readonly UnifiedThread[] = table.flatMap(
  ([size, majorIn, coarsePerInch, coarseDrill, finePerInch, fineDrill]) => {
    const common = { size, majorMm: majorIn * 25.4, drillSource: remembered };
    return [
      { ...common, perInch: coarsePerInch, series: 'UNC' as const, drill: coarseDrill },
      { ...common, perInch: finePerInch, series: 'UNF' as const, drill: fineDrill },
    ];
  },
);

/** The diameter (mm) of the drill that a unified thread is tapped after. */
export const unifiedDrillMm = ({ drill }: UnifiedThread): number => inchDrillNamed(drill)?.diameterMm ?? Number.NaN;

/** Below this a size has a tolerance of its own, mm. */
const quarterInchMm = 6.35;

/**
 * Tolerance (mm) of the minor diameter of a class 2B thread: 0.25 P − 0.4 P² from ¼ in up, below that
 * 0.05 P^(2/3) + 0.03 P/D − 0.002, all in inches, within 0.25 P − 0.4 P² and 0.394 P: from memory of ASME B1.1.
 */
export function minorTolerance2BMm(majorMm: number, pitchMm: number): number {
  const [majorIn, pitchIn] = [majorMm / 25.4, pitchMm / 25.4];
  const leastIn = 0.25 * pitchIn - 0.4 * pitchIn ** 2;
  if (majorMm >= quarterInchMm - 1e-9) return leastIn * 25.4;
  const smallIn = 0.05 * Math.cbrt(pitchIn) ** 2 + (0.03 * pitchIn) / majorIn - 0.002;
  return Math.min(Math.max(smallIn, leastIn), 0.394 * pitchIn) * 25.4;
}
