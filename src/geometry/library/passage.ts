import { type Witness as KernelWitness, passage as passageOfTrees } from '../motion/passage.ts';
import { greatestToleranceMm } from '../motion/tolerances.ts';
import type { Vec } from '../plane/vec.ts';
import { kernelMotion, kernelPlacement, type Motion, type Placement } from './motion.ts';
import type { Point } from './point.ts';
import { insideOf, type Solid } from './solid.ts';

/** Where two solids are nearest or first touch, and when. */
export interface Witness {
  /** The fraction of the motion, 0 to 1. */
  readonly at: number;
  /** A point of the fixed solid's outline, and of the moving one's as it then stands; mm. */
  readonly fixedAt: Point;
  readonly movingAt: Point;
}

/** How two solids pass one another on one motion. */
export interface Passage {
  /**
   * `clear`: they never meet. `touches`: they meet, but nowhere overlap deeper than the tolerance. `fouls`: they do.
   * `undecided`: the tolerance is above 1e-3 mm, which is no answer.
   */
  readonly state: 'clear' | 'touches' | 'fouls' | 'undecided';
  /** The least distance over the whole motion, mm; 0 where they touch or foul. */
  readonly distanceMm: number;
  /** The bound on the error of `distanceMm`, and the depth to which touching is told from fouling; 1e-6 mm or little more. */
  readonly toleranceMm: number;
  /** Where and when they are nearest; the first touch where they meet. */
  readonly nearest: Witness;
  /** Every part of the motion on which they overlap, as fractions of it, in order, and a point where each begins. */
  readonly overlaps: readonly { readonly from: number; readonly to: number; readonly where: Point }[];
}

/**
 * How a moving solid passes a fixed one on one motion: clearance or contact, proved for every instant, not sampled.
 *
 * For outlines of lines and arcs the instants at which a distance can be least, and those at which outlines can first
 * touch, are a finite list: corners against edges, edges and arcs tangent to arcs, both ends, and, on a turn, pairs of
 * places in line with its centre. All of them are gone through, by branch and bound over a tree of the edges. The bound
 * on rounding is after Higham, Accuracy and Stability of Numerical Algorithms, chapter 3.
 *
 * @param start - where `moving` stands as the motion begins; as it was drawn where nothing is said
 * @throws RangeError for a motion that {@link slide} or {@link turn} would not make and for a start with as little
 * sense; TypeError for what {@link solid} did not make
 *
 * @example A roller of 12 mm radius goes round at 220 mm, past a rib whose corners lie hypot(4, 204) mm out.
 * ```ts
 * import { passage, solid, turn } from 'fettle/motion';
 *
 * const rib = solid([[-4, 190], [4, 190], [4, 204], [-4, 204]]);
 * const roller = solid({ circle: [220, 0], radius: 12 });
 * const half = turn(Math.PI, [0, 0]);
 * const passed = passage(rib, roller, half);
 * console.log(passed.state); // clear
 * console.log(passed.distanceMm.toFixed(6)); // 3.960788
 * console.log((220 - 12 - Math.hypot(4, 204)).toFixed(6)); // 3.960788
 *
 * // set 10 mm lower, it runs into the rib: when, and where?
 * const low = passage(rib, roller, half, { shift: [-10, 0] });
 * console.log(low.state, low.overlaps.length); // fouls 1
 * ```
 */
export function passage(fixed: Solid, moving: Solid, motion: Motion, start: Placement = {}): Passage {
  const [ours, theirs] = [insideOf(fixed).tree, insideOf(moving).tree];
  const found = passageOfTrees(ours, theirs, kernelPlacement(start), kernelMotion(motion));
  const { state, distanceMm, toleranceMm, nearest, overlaps } = found;
  // a solid has outlines, so there is a distance
  if (distanceMm === null || nearest === null) throw new Error('no distance between two solids');
  return {
    state: toleranceMm > greatestToleranceMm ? 'undecided' : state,
    distanceMm,
    toleranceMm,
    nearest: witnessOf(nearest),
    overlaps: overlaps.map(({ from, to, where }) => ({ from, to, where: pointOf(where) })),
  };
}

const pointOf = ({ x, y }: Vec): Point => [x, y];

const witnessOf = ({ at, fixedAt, movingAt }: KernelWitness): Witness => ({
  at,
  fixedAt: pointOf(fixedAt),
  movingAt: pointOf(movingAt),
});
