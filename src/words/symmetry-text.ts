import type { PatternMatch } from '../holes/patterns/match-patterns.ts';
import type { OtherPosition } from '../holes/patterns/symmetry.ts';
import { figure } from '../job/length-text.ts';
import { counted } from './layout.ts';
import { degreesOf, fineMm, fineTurnText } from './units.ts';

/** So many other ways are told one by one. */
const mostTold = 4;

/** What the holes alone cannot tell: other turns that match as well or nearly, and the other hand. */
export function symmetryTexts({ fold, others, otherHand, pairs }: PatternMatch): string[] {
  const asGood = others.filter((other) => other.asGood);
  const nearly = others.filter((other) => !other.asGood);
  return [
    ...(fold > 1 ? [foldText(fold)] : told(asGood, (other) => `${wayText(other)} it matches as well.`)),
    ...told(
      nearly,
      (other) =>
        `${wayText(other)} ${other.pairs} of the ${pairs.length} come together, ${fineMm(other.rmsMm)} off by root mean square.`,
    ),
    ...(otherHand.asGood
      ? ['Mirrored it matches as well: the holes cannot tell from which side a part was seen.']
      : []),
  ];
}

const foldText = (fold: number): string =>
  `The pattern is ${fold}-fold: turned by ${figureOf(360 / fold)}° it matches as well, and by every multiple of that. Dowels, or a hole that stands alone, have to tell which.`;

/** A part of a turn with no more figures than it needs. */
const figureOf = (degrees: number): string => String(Number(degrees.toFixed(2)));

function told(ways: readonly OtherPosition[], text: (way: OtherPosition) => string): string[] {
  const more = ways.length - mostTold;
  return [
    ...ways.slice(0, mostTold).map(text),
    ...(more > 0 ? [`So it is at ${counted(more, 'more position')}.`] : []),
  ];
}

const sameTurnDeg = 0.5;

function wayText({ turnRad, shift }: OtherPosition): string {
  const deg = degreesOf(turnRad);
  if (Math.abs(deg) >= sameTurnDeg) return `Turned by ${fineTurnText(turnRad)} from there`;
  return `Shifted by (${figure(shift.x, 1)}, ${figure(shift.y, 1)}) mm from there`;
}
