import { apply, compose, identity, type Rigid, rigid, rotationAbout } from '../plane/rigid.ts';
import { scale, type Vec, vec } from '../plane/vec.ts';

/**
 * One rigid motion of the moving outline in the plane, run at a steady pace from 0 to 1:
 * a straight slide by `by` (zero: it stands still), or a turn about `pole` by `angleRad`
 * (positive anticlockwise, taken literally beyond a full circle).
 */
export type Motion =
  | { readonly kind: 'slide'; readonly by: Vec }
  | { readonly kind: 'turn'; readonly pole: Vec; readonly angleRad: number };

export const still: Motion = { kind: 'slide', by: vec(0, 0) };

export const isMotionless = (motion: Motion): boolean =>
  motion.kind === 'turn' ? motion.angleRad === 0 : motion.by.x === 0 && motion.by.y === 0;

/** Where the motion has carried the plane at a fraction `at` of its way. */
export function motionAt(motion: Motion, at: number): Rigid {
  if (motion.kind === 'slide') return rigid(0, scale(motion.by, at));
  return rotationAbout(motion.pole, motion.angleRad * at);
}

/** The part of a placed motion between fractions `from` and `to`: its start placement and what is left to do. */
export function partOfMotion(start: Rigid, motion: Motion, from: number, to: number): { start: Rigid; motion: Motion } {
  const moved = from === 0 ? identity : motionAt(motion, from);
  const part: Motion =
    motion.kind === 'slide'
      ? { kind: 'slide', by: scale(motion.by, to - from) }
      : { kind: 'turn', pole: motion.pole, angleRad: motion.angleRad * (to - from) };
  return { start: from === 0 ? start : compose(moved, start), motion: part };
}

/** A point of the moving outline's own frame, in the fixed frame, at a fraction of the way. */
export const pointAt = (start: Rigid, motion: Motion, at: number, p: Vec): Vec =>
  apply(motionAt(motion, at), apply(start, p));
