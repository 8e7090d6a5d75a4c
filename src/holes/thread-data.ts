import type { Source } from '../trade/sourced.ts';

export type ThreadSystem = 'metric' | 'unified' | 'pipe' | 'taper-pipe';

/** A drill, and where it is said that it is the one; mm. */
export interface TappingDrill {
  readonly name: string;
  readonly diameterMm: number;
  readonly source: Source;
}

/** All that the tables and formulas say of one internal thread, mm. */
export interface ThreadData {
  /** As it is written: `M12x1.25`, `3/8-16 UNC`, `G1/4`, `Rc1/4`. */
  readonly name: string;
  readonly system: ThreadSystem;
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly pitchDiameterMm: number;
  /** The basic minor diameter, least of a finished hole; of a taper thread at its gauge plane. */
  readonly minorMm: number;
  readonly geometrySource: Source;
  /** The largest minor diameter within tolerance; null for a taper thread, and where the tables have none. */
  readonly largestMinorMm: number | null;
  /** Which tolerance that is, such as `6H`. */
  readonly limitsOf: string;
  readonly limitsSource: Source;
  /** Null for pipe threads, which carry no load. */
  readonly stressAreaMm2: number | null;
  readonly drill: TappingDrill;
  /** Useful length of a taper thread; null for any other. */
  readonly usefulLengthMm: number | null;
}

/** How much of the height between major and minor diameter is cut in a hole of `holeMm`: 1 at the basic minor one, 0 where nothing is. */
export const shareOfBasicHeight = ({ majorMm, minorMm }: ThreadData, holeMm: number): number =>
  Math.max(0, majorMm - holeMm) / (majorMm - minorMm);
