import type { Vec } from '../geometry/plane/vec.ts';
import type { Casting, DepthRange } from '../job/casting.ts';
import { bareGivenLength, givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import { axisName } from './names.ts';
import { degreesOf, degreesText, turnText } from './units.ts';

/** Where a point of the joint frame is on the casting: from the axis, on the clock, and from the nearest dowel. */
export function placeText({ x, y }: Vec, joint: Joint): string {
  const { units } = joint.fit;
  const fromAxis = Math.hypot(x, y);
  // nearer than this a direction from the axis means nothing
  if (fromAxis < 1) return 'on the axis';
  const angleDeg = degreesOf(Math.atan2(y, x));
  const text = `${lengthText(fromAxis, units)} from ${axisName(joint)} at ${degreesText(angleDeg)} (${clockText(angleDeg)})`;
  const dowel = nearestDowel({ x, y }, joint);
  return dowel === null ? text : `${text}, ${lengthText(dowel.mm, units)} from ${dowel.id}`;
}

/** A direction as the hour a clock hand would point to, to the half hour. */
export function clockText(angleDeg: number): string {
  const halves = Math.round((90 - angleDeg) / 15);
  const hour = (((Math.floor(halves / 2) % 12) + 11) % 12) + 1;
  return halves % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`;
}

function nearestDowel({ x, y }: Vec, { fit }: Joint): { id: string; mm: number } | null {
  const near = fit.dowels
    .map(({ fixed: { id, at } }) => ({ id, mm: Math.hypot(x - at.x, y - at.y) }))
    .sort((a, b) => a.mm - b.mm);
  return near[0] ?? null;
}

/** A range of depth from a part's own mating face; negative stands proud of it. */
export function depthText(depth: DepthRange | null, units: Units): string {
  if (depth === null) return 'through every depth';
  const { fromMm, toMm } = depth;
  if (fromMm >= 0) return `from face ${rangeText(fromMm, toMm, units)}`;
  if (toMm <= 0) return `${rangeText(-fromMm, -toMm, units)} proud of its face`;
  return `from ${givenLength(-fromMm, units)} proud of its face to ${givenLength(toMm, units)} behind it`;
}

/** `12 to 90 mm`, or one figure where both read the same. */
export function rangeText(fromMm: number, toMm: number, units: Units): string {
  const [from, to] = [bareGivenLength(fromMm, units), bareGivenLength(toMm, units)];
  return from === to ? `${to} ${units}` : `${from} to ${to} ${units}`;
}

/** The depth of a named section of a casting; null too where there is no such section. */
export const depthOf = (casting: Casting, section: string): DepthRange | null =>
  casting.sections.find(({ id }) => id === section)?.depth ?? null;

/** `22.0° to 1.4°`, or one figure where both read the same. */
export function turnRange(fromRad: number, toRad: number): string {
  const [from, to] = [turnText(fromRad), turnText(toRad)];
  return from === to ? from : `${from} to ${to}`;
}
