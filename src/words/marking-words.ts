import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import { inWords } from './layout.ts';

/** From place to place of the marking-out table. */
const markedEveryMm = 10;

/** How the marking-out table of a part is read at the bench, a step a line. */
export function markingWords(part: string, axis: string, units: Units, rows: MarkingTable, mirrored = false): string[] {
  const angle = `anticlockwise from 3 o'clock, looking at the mating face of ${part}${mirrored ? '; on mirrored sheets clockwise' : ''}`;
  return [
    `${holesWords(rows)} Or go by angle (${angle}) and radius from ${axis}. Lengths are in ${units}; "from face" is the depth from that face.`,
    `Places stand on the planned line, every ${givenLength(markedEveryMm, units)} along each edge and at its ends, corners, deepest place and thinnest wall.`,
    `Take off is square to the outside as it is now${rows.some(({ wholeTip }) => wholeTip) ? '; of a whole tip ("tip") it is the length that comes off, square to the edge' : ''}. First line: must go whatever the error. Last line: never past it. Wall left: as planned, and at worst from the last line with the errors taken off.`,
  ];
}

/** What is measured from the two holes: what dividers are set to, or why they cannot be, and what a height gauge goes by. */
function holesWords(rows: MarkingTable): string {
  const [row] = rows;
  if (!row?.dividers) return 'There are no two holes to set dividers from.';
  const known = row.dividers.filter(({ setMm }) => setMm !== null).map(({ from }) => from);
  const unknown = row.dividers.filter(({ setMm }) => setMm === null).map(({ from }) => from);
  const plan = `"In plan" is level with the face, from the centre of each: for square and height gauge, at the depth "from face".`;
  const set = `Set dividers or a trammel from ${inWords(known)} to "dividers": from the middle of the dowel's end or of the hole where it opens, straight to the place, at the end of the cut nearer the face.`;
  const not = `How proud ${inWords(unknown)} ${unknown.length === 1 ? 'stands' : 'stand'} is not given, so no dividers are set from there.`;
  return [...(known.length > 0 ? [set] : []), ...(unknown.length > 0 ? [not] : []), plan].join(' ');
}
