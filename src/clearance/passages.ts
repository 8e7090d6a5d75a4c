import type { Motion } from '../geometry/motion/motion.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import { type Passage, passage } from '../geometry/motion/passage.ts';
import type { Rigid } from '../geometry/plane/rigid.ts';
import { numberOf, remembered } from '../geometry/remembered.ts';

/** Of one outline; a way in is a few legs, its curve some hundred pieces. */
const mostPassages = 1000;
const known = remembered<Passage>(mostPassages);

/** How two outlines pass one another, worked out once however often it is asked and whatever clearance is wanted. */
export const passageOf = (fixed: OutlineTree, moving: OutlineTree, start: Rigid, motion: Motion): Passage =>
  known(fixed, `${numberOf(moving)} ${motionKey(start, motion)}`, () => passage(fixed, moving, start, motion));

/** Tells motions apart, to the last bit. */
export function motionKey({ turnRad, shift }: Rigid, motion: Motion): string {
  const how =
    motion.kind === 'turn'
      ? `turn ${motion.angleRad} ${motion.pole.x} ${motion.pole.y}`
      : `slide ${motion.by.x} ${motion.by.y}`;
  return `${turnRad} ${shift.x} ${shift.y} ${how}`;
}
