import type { DepthRange } from '../../src/job/casting.ts';
import { lengthText } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { Meeting, Met } from '../../src/ways/meetings.ts';
import type { WayPoint } from '../../src/ways/way-along.ts';
import { depthText } from '../../src/words/places.ts';
import { turnText } from '../../src/words/units.ts';

/** More that meet at one place nobody reads. */
const mostTold = 4;

/** Every word of the map of turns and stand-offs that the answer does not bring with it. */
export const everyWayWords = {
  room: 'Room to turn about the crank',
  least: 'least turn',
  most: 'greatest turn',
  ask: 'Every way in',
  close: 'Close the map',
  workingOut: 'Looking at every turn and stand-off',
  map: 'Map of turns and stand-offs',
  standOffAxis: (units: Units): string => `stand-off, ${units}`,
  turnAxis: 'turn',
  plot: 'A place on the map: what is in the way there',
  help: 'Drag a position, or move it by arrow keys: 0.5° across, half a millimetre (0.02 in) up and down. Touch the map to be told what is in the way there.',
  present: 'the way of this job',
  stands: 'where the part stands',
  dowels: 'below: on the dowels',
  key: { foul: 'fouls', near: 'too near', unknown: 'not traced' },
  found: (needsNoCut: boolean): string => (needsNoCut ? 'the widest way' : 'the cheapest to cut for'),
  wayFound: (needsNoCut: boolean, way: string): string => `Dashed, ${everyWayWords.found(needsNoCut)}: ${way}.`,
  take: 'Take this way',
  taken: 'The job goes this way.',
  homeOnly: 'This job has no way in yet: take one, or add a position below.',
  aside: 'The way of this job goes aside of the axis, where the map does not hold.',
  position: (n: number, at: WayPoint, units: Units): string => `Position ${n}: ${placeText(at, units)}`,
  place: (at: WayPoint, units: Units): string => placeText(at, units).replace('turned', 'Turned'),
  held: {
    turn: 'It slides home from here: only its stand-off moves.',
    standOff: 'It turns home from here: only its turn moves.',
  },
  met: ({ onDowels, meetings }: Met, { turnRad }: WayPoint, units: Units): string[] => {
    const told = meetings.slice(0, mostTold).map((meeting) => meetingText(meeting, units));
    const more = meetings.length - told.length;
    return [
      ...(onDowels && turnRad !== 0 ? ['The dowels are engaged: nothing turns here.'] : []),
      ...(meetings.length === 0 ? ['Nothing comes nearer than asked.'] : told),
      ...(more > 0 ? [`And ${more} more.`] : []),
    ];
  },
} as const;

const placeText = ({ turnRad, standOffMm }: WayPoint, units: Units): string =>
  `turned ${turnText(turnRad)}, stand-off ${lengthText(standOffMm, units)}`;

function meetingText({ fixed, moving, how, distanceMm, depth }: Meeting, units: Units): string {
  const at = depthPhrase(depth, units);
  switch (how) {
    case 'fouls':
      return `${fixed} meets ${moving}, ${at}.`;
    case 'near':
      return `${fixed} passes ${moving} at ${lengthText(distanceMm ?? 0, units)}, ${at}.`;
    case 'unknown':
      return fixed !== null && moving !== null
        ? `It cannot be told whether ${fixed} meets ${moving}, ${at}.`
        : `Nobody has traced what ${fixed ?? moving} would meet, ${at}.`;
  }
}

/** To what an outline can answer for: ends that the arithmetic gives have more figures than anybody measured. */
const depthPhrase = (depth: DepthRange | null, units: Units): string =>
  depthText(depth && { fromMm: tenth(depth.fromMm), toMm: tenth(depth.toMm) }, units);

const tenth = (mm: number): number => Math.round(mm * 10) / 10;
