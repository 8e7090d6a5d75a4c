import type { Finding } from '../../src/files/finding.ts';
import type { PositionFile } from '../../src/files/fit-file.ts';
import { fineLength, lengthText, mmIn } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { NextReading } from '../../src/trial/measure-next.ts';
import { degreesText } from '../../src/words/units.ts';

const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** Every word of the trial fits of a job. */
export const trialWords = {
  notBegun: 'nothing read yet',
  read: (goes: number, readings: number): string =>
    `${counted(goes, 'go', 'goes')}, ${counted(readings, 'reading', 'readings')}`,
  toPutRight: (count: number): string => `${counted(count, 'thing', 'things')} to put right in what was read`,

  foretold: 'Before anything is cut',

  tapIt: 'Offer it up. Tap the mark on the casting: the drawing takes the place.',
  tapKey: 'By key: while the drawing has the focus, Enter takes the outline nearest to the cross.',
  nothingThere: 'No outline of the fixed part there. Tap nearer to one, or see it larger.',
  nothingBeside: (section: string): string => `Nothing of the moving part stands beside ${section} there.`,
  newReading: 'What is there?',
  sayStop: 'Say below where it stopped: a reading is of how the moving part stood.',
  leave: 'Leave it',
  clay: 'clay, thick',
  depth: 'depth from face',
  more: 'More',
  error: 'read to within ±',
  note: 'note',
  marked: 'It marked',
  clear: 'It is clear',
  reading: (id: string, section: string): string => `${id} · ${section}`,
  removeReading: (id: string): string => `Take out reading ${id}`,
  home: 'home',
  stood: ({ standOff = 0, turn = 0 }: PositionFile, file: Units, shown: Units): string =>
    `where it stopped, ${degreesText(turn)} and ${lengthText(standOff * mmIn(file), shown)} stand-off`,

  go: (go: number, date: string | undefined): string => (date === undefined ? `Go ${go}` : `Go ${go}, ${date}`),
  addGo: (go: number): string => `Begin go ${go}`,
  removeGo: (go: number): string => `Take out go ${go}`,
  cut: 'What had come off',
  cutKinds: [
    ['none', 'nothing'],
    ['first', 'to the first line'],
    ['planned', 'all that was planned'],
    ['measured', 'as measured, place by place'],
  ],
  tookPlace: 'place, its number in the table',
  tookOff: 'came off there',
  noPlace: (last: number): string =>
    last === 0 ? 'The number of a place, please.' : `The table has the places 1 to ${last}.`,
  took: (place: number, off: string): string => `Place ${place}: ${off}`,
  removeTook: (place: number): string => `Take out place ${place}`,
  stopped: 'Where it stopped',
  stops: [
    ['unsaid', 'not written down'],
    ['home', 'it went home'],
    ['at', 'at a turn and stand-off'],
  ],
  stopsByDowel: (dowel: string): string => `${dowel}, so far from its hole`,
  turn: 'turn',
  standOff: 'stand-off',
  fromHole: (dowel: string): string => `${dowel} from its hole`,
  faces: 'Between the faces',
  faceAt: 'beside the hole',
  gap: 'feeler gauge',
  faceGap: (hole: string, gap: string): string => `${hole}: ${gap}`,
  removeFace: (hole: string): string => `Take out the gap at ${hole}`,

  /** A finding beside what it is of. */
  refused: ({ found, expected, didYouMean }: Finding): string =>
    `Not taken: ${found}. Wanted: ${expected}.${didYouMean === undefined ? '' : ` ${didYouMean}, perhaps?`}`,
  refusedElsewhere: (finding: Finding): string => `${finding.at}: ${trialWords.refused(finding)}`,

  disagrees: (expectedMm: number, units: Units): string =>
    `Disagrees with the others: by those it is ${fineLength(expectedMm, units)}. Look at it again.`,

  answer: 'What it says',
  workingOut: 'Working it out',
  next: 'next',
  measureNext: ({ section, depthMm, expectedMm, expectedErrorMm }: NextReading, units: Units): string =>
    `Measure next: clay on ${section}, ${lengthText(depthMm, units)} from face, home. It should be ${fineLength(expectedMm, units)}, ± ${fineLength(expectedErrorMm, units)}.`,
  measureIt: 'Measure there',
  save: 'Save the trial file',
  open: 'Open a trial file',
  notOpened: (finding: string): string => `Without its trial fits, which stay as they are: ${finding}`,
  noJob: (file: string): string => `${file} is of a job: open that first.`,
} as const;
