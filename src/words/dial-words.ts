import { figure } from '../job/length-text.ts';
import { clockText } from './places.ts';
import { degreesOf } from './units.ts';

/** A length as a dial reads it, to a thousandth. */
export const dialMm = (mm: number): string => `${figure(mm, 3)} mm`;

/** A limit with every digit it has, to a tenth of a thousandth, and in inches. */
export const limitText = (mm: number): string => `${Number(mm.toFixed(4))} mm (${Number((mm / 25.4).toFixed(4))} in)`;

const hourRad = Math.PI / 6;
const hairRad = 1e-4;

/** A direction by the clock where it is an hour or a half, else in degrees too. */
export function towardText(angleRad: number): string {
  const degrees = figure(degreesOf(Math.atan2(Math.sin(angleRad), Math.cos(angleRad))), 1);
  const halves = angleRad / (hourRad / 2);
  const clock = clockText(degreesOf(angleRad));
  return Math.abs(halves - Math.round(halves)) < hairRad ? clock : `${clock} (${degrees}°)`;
}
