import type { PartFile } from '../files/part-file.ts';
import { roundDown6 } from '../geometry/plane/rounding.ts';
import { inUnits } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { RoomRange } from './room-on-crank.ts';

/** The name by which a part file of room is known again. */
export const roomPartName = 'Room on the crank';

/** How far a ring keeps off one that is smaller, so that rounding lets none of it into the other's depths; file units. */
const keepsOff = 2e-6;

/**
 * The body that fills some ranges of room, as a part file to put among the rotating parts of the fit; null where there is
 * none. Ranges that nothing limits, or that have no end on one side, are left out: any body there is smaller than they are.
 */
export function roomPart(ranges: readonly RoomRange[], units: Units): PartFile | null {
  const sections = ranges.flatMap((range, i) => {
    const radius = range.radiusMm === null ? 0 : roundDown6(inUnits(range.radiusMm, units)) - keepsOff;
    const depth = depthIn(range, ranges[i - 1], ranges[i + 1], units);
    if (radius <= 0 || depth === null || (depth.length === 2 && depth[0] >= depth[1])) return [];
    const circle = { circle: [0, 0] as [number, number], radius: roundDown6(radius) };
    return [{ gotBy: 'computed', loops: [circle], ...(depth.length === 2 ? { depth } : {}) }];
  });
  if (sections.length === 0) return null;
  return {
    format: 'fettle-part/1',
    name: roomPartName,
    units,
    viewedFrom: 'face',
    traceError: 0,
    depthError: 0,
    sections: sections.map((section, i) => ({ id: `ring ${i + 1}`, ...section })),
  };
}

/** The depth of a ring in a file's units: empty through every depth, null where it is told by no file. */
function depthIn(
  { depth, radiusMm }: RoomRange,
  before: RoomRange | undefined,
  after: RoomRange | undefined,
  units: Units,
): [number, number] | [] | null {
  const { fromMm, toMm } = depth;
  if (fromMm === null && toMm === null) return [];
  if (fromMm === null || toMm === null) return null;
  const yields = (to: RoomRange | undefined): number => (isLess(to?.radiusMm ?? null, radiusMm) ? keepsOff : 0);
  const from = 0 - roundDown6(0 - inUnits(fromMm, units) - yields(before));
  return [from, roundDown6(inUnits(toMm, units) - yields(after))];
}

const isLess = (a: number | null, b: number | null): boolean => a !== null && (b === null || a < b);
