import type { Instant, WayInResult } from '../clearance/check-result.ts';
import type { TravelCurve } from '../clearance/travel-curve.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import { turnText } from './units.ts';

/** The chart of the clearance along the way in, told for those who do not see it. */
export function travelWords(
  { askedMm, pieces }: TravelCurve,
  { clearanceMm, firstTouch }: Pick<WayInResult, 'clearanceMm' | 'firstTouch'>,
  units: Units,
): { readonly title: string; readonly description: string } {
  const least =
    clearanceMm === null
      ? 'No sections share depth anywhere on it.'
      : `At the least ${lengthText(clearanceMm, units)}.`;
  const touch = firstTouch === null ? '' : ` ${sentence(firstTouchLabel(firstTouch, units))}`;
  return {
    title: 'Least clearance along the way in',
    description: `${least} Asked: ${givenLength(askedMm, units)}.${touch} Each of the ${pieces.length} steps is the least over its piece of the way, proved for the outlines as traced; the band under it is the tracing error at its worst.`,
  };
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

export const firstTouchLabel = ({ leg, turnRad, standOffMm }: Instant, units: Units): string =>
  `first touch: leg ${leg}, turn ${turnText(turnRad)}, stand-off ${lengthText(standOffMm, units)}`;

/** Where the curve is cut off at the top of a chart. */
export const cutOffAt = (mostMm: number, units: Units): string => `cut off at ${givenLength(mostMm, units)}`;

/** What one sees on the chart. */
export const chartCaption = (
  { pieces }: TravelCurve,
  after: TravelCurve | null,
  { fouling }: Pick<WayInResult, 'fouling'>,
): string =>
  `Least clearance along the way in. Each of the ${pieces.length} steps is the least over its piece of the way, proved for the outlines as traced, so the line is nowhere too high; the band under it is the tracing error at its worst, and where it dips below nothing the parts may touch.${fouling.length === 0 ? '' : ' Hatched: fouls as traced.'}${after === null ? '' : ' Dotted: once it is cut as planned.'}`;

/** The lines of the chart, where there are two. */
export const curveNames = { before: 'as it is', after: 'after the cut' } as const;
