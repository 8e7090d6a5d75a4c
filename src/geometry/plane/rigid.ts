import { add, scale, type Vec, vec } from './vec.ts';

/** A rigid motion of the plane, x ↦ R(turnRad)·x + shift. */
export interface Rigid {
  readonly turnRad: number;
  readonly cos: number;
  readonly sin: number;
  readonly shift: Vec;
}

export const rigid = (turnRad: number, shift: Vec): Rigid => ({
  turnRad,
  cos: Math.cos(turnRad),
  sin: Math.sin(turnRad),
  shift,
});

export const identity: Rigid = rigid(0, vec(0, 0));

/**
 * A rotation about `pole`; positive anticlockwise. The shift (I − R)·pole is formed through 1 − cos = 2 sin²(½θ), so
 * that a far pole and a small turn lose no digits.
 */
export function rotationAbout(pole: Vec, turnRad: number): Rigid {
  const sin = Math.sin(turnRad);
  const versine = 2 * Math.sin(turnRad / 2) ** 2;
  return rigid(turnRad, vec(versine * pole.x + sin * pole.y, versine * pole.y - sin * pole.x));
}

export const rotate = (motion: Rigid, v: Vec): Vec =>
  vec(motion.cos * v.x - motion.sin * v.y, motion.sin * v.x + motion.cos * v.y);

export const apply = (motion: Rigid, point: Vec): Vec => add(rotate(motion, point), motion.shift);

/** The motion that does `first` and then `second`. */
export function compose(second: Rigid, first: Rigid): Rigid {
  return rigid(second.turnRad + first.turnRad, add(rotate(second, first.shift), second.shift));
}

export function inverse(motion: Rigid): Rigid {
  const back = rigid(-motion.turnRad, vec(0, 0));
  return { ...back, shift: scale(rotate(back, motion.shift), -1) };
}
