import type { Source } from './sourced.ts';

/** A pipe thread of senders, plugs and feeds: G (ISO 228) and, on the same sizes and pitches, R and Rc (ISO 7); mm. */
export interface PipeThread {
  /** As in `1/8`. */
  readonly size: string;
  /** Of a taper thread: at the gauge plane. */
  readonly majorMm: number;
  readonly perInch: number;
  /** Tolerance of the minor diameter of an internal G thread. */
  readonly minorToleranceMm: number;
  readonly drillMm: number;
  /** For a taper thread Rc cut without a reamer. */
  readonly taperDrillMm: number;
  /** From the small end of a taper thread R to its gauge plane, and how much of it is of use. */
  readonly gaugeLengthMm: number;
  readonly usefulLengthMm: number;
}

/** Every figure of `pipeThreads`. */
export const pipeThreadSource: Source = { basis: 'from memory', from: 'ISO 228-1 and ISO 7-1' };
/** Of their drills. */
export const pipeDrillSource: Source = { basis: 'from memory', from: "tap makers' tables" };

const row = (
  size: string,
  majorMm: number,
  perInch: number,
  minorToleranceMm: number,
  [drillMm, taperDrillMm]: readonly [number, number],
  [gaugeLengthMm, usefulLengthMm]: readonly [number, number],
): PipeThread => ({
  size,
  majorMm,
  perInch,
  minorToleranceMm,
  drillMm,
  taperDrillMm,
  gaugeLengthMm,
  usefulLengthMm,
});

export const pipeThreads: readonly PipeThread[] = [
  row('1/8', 9.728, 28, 0.282, [8.8, 8.4], [4, 6.5]),
  row('1/4', 13.157, 19, 0.445, [11.8, 11.2], [6, 9.7]),
  row('3/8', 16.662, 19, 0.445, [15.25, 14.75], [6.4, 10.1]),
  row('1/2', 20.955, 14, 0.541, [19, 18.25], [8.2, 13.2]),
];

/** A taper thread loses a sixteenth of its length in diameter (ISO 7-1, from memory). */
export const pipeTaper = 1 / 16;

/** Height (mm) of a 55° thread between crest and root, h = 2/3 H with H = P / (2 tan 27.5°); computed. */
export const pipeThreadHeightMm = (pitchMm: number): number => pitchMm / (3 * Math.tan((27.5 * Math.PI) / 180));
