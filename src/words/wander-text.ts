import type { CheckResult, StrayedResult } from '../clearance/check-result.ts';
import type { Forgiven } from '../clearance/wander/forgiven.ts';
import { lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Wander } from '../job/wander.ts';
import { turnText } from './units.ts';

/** How far each may be strayed in by itself; never told as more than it is. */
export const forgivenText = ({ each, lookedTo }: Forgiven, units: Units): string =>
  `Steered by hand it forgives, each by itself, before metal meets as traced: ${wanderText(roundedDown(each, units), lookedTo, units)}.`;

/** What is kept within the wander of a fit; nothing where it has none. */
export function strayedTexts({ wander }: Pick<CheckResult, 'wander'>, units: Units): string[] {
  if (wander === null) return [];
  const least = [wander, ...wander.rotating].reduce((worst, one) => (keptBy(one) < keptBy(worst) ? one : worst));
  const within = `Within ${wanderText(wander.wander, null, units)} at once`;
  const until = 'until it is on its dowels, which guide it';
  if (least.clearanceMm === null) return [`${within} nothing can meet, ${until}.`];
  const kept =
    least.clearanceMm > 0 ? `it keeps ${lengthText(least.clearanceMm, units)} or more` : 'it may come to touch';
  return [`${within} ${kept}, ${until}.`];
}

const keptBy = ({ clearanceMm }: StrayedResult): number => clearanceMm ?? Number.POSITIVE_INFINITY;

/** A wander, each of it; what reaches `most` may be more. */
export function wanderText(wander: Wander, most: Wander | null, units: Units): string {
  const { turnRad, standOffMm, shiftMm, tiltRad } = wander;
  const of = (part: keyof Wander, text: string): string =>
    most !== null && wander[part] >= most[part] ? `±over ${text}` : `±${text}`;
  return [
    `${of('turnRad', turnText(turnRad))} of turn`,
    `${of('standOffMm', lengthText(standOffMm, units))} of stand-off`,
    `${of('shiftMm', lengthText(shiftMm, units))} aside`,
    `${of('tiltRad', turnText(tiltRad))} of tilt`,
  ].join(', ');
}

function roundedDown({ turnRad, standOffMm, shiftMm, tiltRad }: Wander, units: Units): Wander {
  const down = (value: number, step: number): number => Math.floor(value / step + 1e-9) * step;
  const [stepRad, stepMm] = [Math.PI / 1800, units === 'mm' ? 0.1 : 0.254];
  return {
    turnRad: down(turnRad, stepRad),
    standOffMm: down(standOffMm, stepMm),
    shiftMm: down(shiftMm, stepMm),
    tiltRad: down(tiltRad, stepRad),
  };
}
