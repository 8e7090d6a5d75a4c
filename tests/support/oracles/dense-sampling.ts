import type { Motion } from '../../../src/geometry/motion/motion.ts';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';
import { placedAt } from './lipschitz.ts';
import { type Solid, solidDistance } from './solid.ts';

/** The least distance seen at `count` + 1 even instants of a motion: never less than the true least distance. */
export function leastSampled(fixed: Solid, moving: Solid, start: Rigid, motion: Motion, count: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= count && least > 0; i++) {
    least = Math.min(least, solidDistance(fixed, placedAt(moving, start, motion, i / count)));
  }
  return least;
}
