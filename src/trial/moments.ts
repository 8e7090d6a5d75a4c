import { rotate, rotationAbout } from '../geometry/plane/rigid.ts';
import { add, length, scale, sub } from '../geometry/plane/vec.ts';
import type { Leg, Position } from '../job/path.ts';
import { isHome } from '../job/position-of.ts';
import { nearestOnTheWay, runsBy } from './on-the-way.ts';
import type { Go } from './trial.ts';

/** Where the moving part was said to stand, away from home, while something was read; and how well that is known. */
export interface Moment {
  readonly key: string;
  readonly position: Position;
  readonly leg: Leg;
  /** ± limit of how far on along its leg it truly was: as far as a turn takes a point at the lever, or a slide goes; mm. */
  readonly errorMm: number;
}

/** One that stands where it stopped is known as the stop is; of any other it is taken to be known as well as this. */
const otherErrorRad = (0.5 * Math.PI) / 180;
const otherErrorMm = 0.5;

export const momentKey = (go: number, { standOffMm, turnRad, shift }: Position): string =>
  `${go} ${standOffMm} ${turnRad} ${shift.x} ${shift.y}`;

/** Every position away from home of which a go has a reading, once each. */
export function momentsOf(legs: readonly Leg[], { go, stopped, readings }: Go, leverMm: number): Moment[] {
  const moments = new Map<string, Moment>();
  const keep = (position: Position, leg: Leg, error: number): void => {
    const key = momentKey(go, position);
    const errorMm = runsBy(leg).per === 'turn' ? error * leverMm : error;
    if (!moments.has(key)) moments.set(key, { key, position, leg, errorMm });
  };
  const stop = stopped?.kind === 'at' ? legs[stopped.leg - 1] : undefined;
  if (stopped?.kind === 'at' && stop !== undefined) keep(stopped.position, stop, stopped.error);
  for (const { position } of readings) {
    const on = isHome(position) ? null : nearestOnTheWay(legs, position);
    const leg = on === null ? undefined : legs[on.leg - 1];
    if (leg !== undefined) keep(position, leg, runsBy(leg).per === 'turn' ? otherErrorRad : otherErrorMm);
  }
  return [...moments.values()];
}

/** The position so many mm farther on along its leg, a turn counted at the lever. */
export function fartherOn({ position, leg: { motion } }: Moment, byMm: number, leverMm: number): Position {
  if (motion.kind === 'slide') {
    const whole = length(motion.by);
    return whole === 0 ? position : { ...position, shift: add(position.shift, scale(motion.by, byMm / whole)) };
  }
  const byRad = (Math.sign(motion.angleRad) * byMm) / leverMm;
  const about = rotationAbout(motion.pole, byRad);
  const shift = add(rotate(about, sub(position.shift, motion.pole)), motion.pole);
  return { ...position, turnRad: position.turnRad + byRad, shift };
}
