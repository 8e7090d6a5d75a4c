import { apply, inverse, type Rigid, rotate } from '../plane/rigid.ts';
import { scale } from '../plane/vec.ts';
import type { Motion } from './motion.ts';

/**
 * A placed motion as the moving outline sees the fixed one move: the inverse of start, then of the motion, at every
 * instant.
 */
export function seenFromMoving(start: Rigid, motion: Motion): { start: Rigid; motion: Motion } {
  const back = inverse(start);
  if (motion.kind === 'slide')
    return { start: back, motion: { kind: 'slide', by: scale(rotate(back, motion.by), -1) } };
  return { start: back, motion: { kind: 'turn', pole: apply(back, motion.pole), angleRad: -motion.angleRad } };
}
