import type { Finding } from '../../src/files/finding.ts';
import type { LengthName, RowName } from '../../src/stack/stack.ts';
import { findingText } from '../../src/words/finding-text.ts';
import { clockText } from '../../src/words/places.ts';
import { lengthNames } from '../../src/words/stack-measuring.ts';
import { rowNames } from '../../src/words/stack-text.ts';
import { againPlace, type BenchForm, type DialPlace } from '../job/bench-entries.ts';

const hole = {
  thread: 'Thread',
  was: 'In place of',
  material: 'Material',
  boss: 'Boss, diameter',
  wall: 'Wall now',
  keep: 'Wall to keep',
  depth: 'Depth to the shoulder',
  engagement: 'Engagement wanted',
  have: 'Drills, mm or inch names',
} as const;

const bore = {
  bore: 'Readings of the bore',
  face: 'Readings of the face',
  faceRadius: "Plunger's distance from the crank on the face",
  sag: 'Sag of the rig, zeroed above, read below',
  error: 'A reading may err by ±',
  limit: 'TIR allowed',
  flange: 'Housing flange',
} as const;

const clock = (place: DialPlace): string => {
  if (place === againPlace) return "12 o'clock again";
  return clockText(90 - 30 * place);
};

/** The words of what is worked out at the bench. */
export const benchWords = {
  forms: {
    hole: 'A tapped hole',
    bore: 'The bore by a dial',
    stack: 'Lengths along the crank',
  } satisfies Readonly<Record<BenchForm, string>>,
  kept: 'What is typed here is of no job: it stays in this browser until it is cleared.',
  clear: 'Clear',
  hole,
  bore,
  threads: 'M12x1.25, 3/8-16, G1/4',
  drills: '8.5, #7, 27/64',
  unnamedMaterial: 'not said',
  noFlange: 'none: as stated, or that of car gearboxes',
  flange: (number: string): string => `SAE ${number}`,
  dialHow:
    "The crank carries the dial round. Look at the block's face, 12 o'clock up. Plus: plunger pressed in, the surface nearer. Four places or more; 12 o'clock again tells whether the dial held its zero.",
  place: clock,
  error: 'Every length errs by ±',
  errorOf: (length: string): string => `${length}, ±`,
  wanted: (row: RowName): string => `${rowNames[row]}, at least`,
  wantedGroup: 'What you want of them',
  stackHow: 'A length that is left empty is named below, with how to measure it.',
  refused: (form: BenchForm, finding: Finding): string => findingText({ ...finding, at: fieldName(form, finding.at) }),
};

/** A field as it is called on the page, of the place a finding names. */
function fieldName(form: BenchForm, at: string): string {
  if (form === 'hole') return hole[at as keyof typeof hole] ?? at;
  if (form === 'bore') return bore[at as keyof typeof bore] ?? at;
  const [kind, name = ''] = at.split('.');
  if (kind === 'wanted') return benchWords.wanted(name as RowName);
  return kind === 'lengths' ? (lengthNames[name as LengthName] ?? at) : benchWords.error;
}
