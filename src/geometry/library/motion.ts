import { type Motion as KernelMotion, still } from '../motion/motion.ts';
import { type Rigid, rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { farthestMm } from './outline.ts';
import { isPoint, type Point } from './point.ts';

/** One motion of the moving solid, run at a steady pace: a straight slide, or a turn about a point. */
export type Motion =
  | { readonly kind: 'slide'; readonly by: Point }
  | { readonly kind: 'turn'; readonly turnRad: number; readonly about: Point };

/**
 * A straight slide by `[x, y]` mm, 1e5 mm at most; by `[0, 0]` the solid stands still.
 *
 * @throws RangeError where it is no such thing
 *
 * @example Two discs of 5 mm radius, 30 mm apart, one sliding towards the other by 15 mm.
 * ```ts
 * import { passage, slide, solid } from 'fettle/motion';
 *
 * const fixed = solid({ circle: [0, 0], radius: 5 });
 * const moving = solid({ circle: [30, 0], radius: 5 });
 * console.log(passage(fixed, moving, slide([-15, 0])).distanceMm); // 5
 * ```
 */
export function slide(by: Point): Motion {
  const { x, y } = pointIn(by, farthestMm, 'slide');
  return { kind: 'slide', by: [x, y] };
}

/**
 * A turn by an angle in radians, positive anticlockwise, about a point in mm. It is taken literally beyond a full
 * circle, up to a hundred of them; the point lies within 1e7 mm of the origin.
 *
 * @throws RangeError where it is no such thing
 *
 * @example A disc of 5 mm radius, turned to the other side of a post that it clears by 5 mm all the way.
 * ```ts
 * import { passage, solid, turn } from 'fettle/motion';
 *
 * const post = solid({ circle: [0, 0], radius: 10 });
 * const disc = solid({ circle: [20, 0], radius: 5 });
 * console.log(passage(post, disc, turn(Math.PI, [0, 0])).distanceMm.toFixed(6)); // 5.000000
 * ```
 */
export function turn(turnRad: number, about: Point): Motion {
  const { x, y } = pointIn(about, farthestPoleMm, 'about');
  return { kind: 'turn', turnRad: within(turnRad, mostTurnRad, 'turnRad'), about: [x, y] };
}

/**
 * Where the moving solid stands before it moves: turned about the origin by `turnRad`, anticlockwise, and then shifted
 * by `[x, y]` mm. What is left out is 0.
 */
export interface Placement {
  readonly turnRad?: number;
  readonly shift?: Point;
}

const mostTurnRad = 200 * Math.PI;
/** A point about which a solid turns so little that the turn is all but a slide lies far off. */
const farthestPoleMm = 1e7;

/** A motion as the kernel has it; a `RangeError` where it is none. */
export function kernelMotion(motion: Motion): KernelMotion {
  if (motion.kind === 'turn') {
    const pole = pointIn(motion.about, farthestPoleMm, 'about');
    return { kind: 'turn', pole, angleRad: within(motion.turnRad, mostTurnRad, 'turnRad') };
  }
  const by = pointIn(motion.by, farthestMm, 'slide');
  return by.x === 0 && by.y === 0 ? still : { kind: 'slide', by };
}

/** A placement as the kernel has it; a `RangeError` where it is none. */
export const kernelPlacement = ({ turnRad = 0, shift = [0, 0] }: Placement = {}): Rigid =>
  rigid(within(turnRad, mostTurnRad, 'turnRad'), pointIn(shift, farthestMm, 'shift'));

function pointIn(point: Point, most: number, name: string): Vec {
  if (!isPoint(point)) throw new RangeError(`${name}: expected [x, y], two numbers in mm`);
  return vec(within(point[0], most, name), within(point[1], most, name));
}

function within(value: number, most: number, name: string): number {
  if (typeof value === 'number' && Math.abs(value) <= most) return value;
  throw new RangeError(`${name}: found ${value}, expected a number within ±${most}`);
}
