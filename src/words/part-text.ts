import type { Casting } from '../job/casting.ts';
import { givenLength } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';

/** In plain words which side of the metal one looks at: a mirrored template costs a casting. */
export const viewedFromText = ({ fit, fixed, moving }: Joint): string =>
  `The large view is viewed from in front of the fixed part: you look at the mating face of ${fixed.name}, ` +
  `and ${moving.name} would come from behind you. Lengths are in ${fit.units === 'mm' ? 'mm' : 'inches'}.`;

/** A part by its name, how it was traced and how well. */
export function partText(role: string, part: Casting): string {
  const number = part.castingNumber === null ? '' : `, casting number ${part.castingNumber}`;
  const seen = part.viewedFrom === 'face' ? 'looking at its own mating face' : 'through it from behind';
  const hand = part.mirrored ? 'mirrored here by Fettle' : 'not mirrored here';
  return `${role}: ${part.name}${number}. Traced ${seen}, ${hand}; ${tracedWithin(part)}.`;
}

function tracedWithin({ sections, units }: Casting): string {
  const errors = sections.map(({ traceErrorMm }) => traceErrorMm);
  const [least, most] = [Math.min(...errors), Math.max(...errors)];
  const range = least === most ? '' : `${givenLength(least, units)} to `;
  const stated = sections.every(({ traceErrorStated }) => traceErrorStated) ? '' : ', assumed: not stated';
  return `outlines ± ${range}${givenLength(most, units)}${stated}`;
}
