import type { Motion } from '../../../src/geometry/motion/motion.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';

/** A case any implementation can be held against: what passes what, and what must come out. */
export interface MotionCase {
  readonly title: string;
  readonly fixed: Region;
  readonly moving: Region;
  readonly start: Rigid;
  readonly motion: Motion;
  /** Where the expected values come from. */
  readonly source: string;
  readonly expected: {
    readonly state: 'clear' | 'touches' | 'fouls';
    /** Least distance, mm. */
    readonly distanceMm: number;
    /** When it is nearest, or first touches, as a fraction of the motion; left out where more than one instant will do. */
    readonly at?: number;
    /** When it overlaps. */
    readonly overlaps?: readonly (readonly [number, number])[];
  };
  /** Of distance (mm) and of fractions alike. */
  readonly tolerance: number;
  readonly toleranceReason: string;
}

/** Closed forms in doubles, coordinates of some 100 mm. */
export const closedForm = {
  tolerance: 1e-9,
  toleranceReason: 'rounding of coordinates of some 100 mm through one rotation, ten-thousandfold',
} as const;
