import { bareGivenLength, mmIn } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { TurnRange } from '../../ways/turns.ts';
import { degreesOf } from '../../words/units.ts';
import { niceStep } from '../scene/nice-step.ts';

/** A figure on an axis, in degrees or mm, as it is written there. */
export interface Tick {
  readonly at: number;
  readonly text: string;
}

export function turnTicks({ fromRad, toRad }: TurnRange): Tick[] {
  const [fromDeg, toDeg] = [degreesOf(fromRad), degreesOf(toRad)];
  const span = toDeg - fromDeg;
  const step = span > 60 ? 15 : span > 30 ? 10 : niceStep(span / 8);
  const first = Math.ceil(fromDeg / step - 1e-9);
  return Array.from({ length: Math.floor(toDeg / step + 1e-9) - first + 1 }, (_, i) => {
    const at = (first + i) * step;
    return { at, text: `${Number(at.toFixed(3))}°`.replace('-', '−') };
  });
}

export function standOffTicks(topMm: number, units: Units): Tick[] {
  const step = niceStep(topMm / mmIn(units) / 6) * mmIn(units);
  return Array.from({ length: Math.floor(topMm / step) + 1 }, (_, i) => ({
    at: i * step,
    text: bareGivenLength(i * step, units),
  }));
}
