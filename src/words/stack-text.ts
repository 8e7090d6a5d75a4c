import { figure, fineLength, inUnits } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { LengthName, RowName } from '../stack/stack.ts';
import type { StackResult, StackRow } from '../stack/stack-result.ts';
import { columns, counted, inWords, listed, paragraph, wrapped } from './layout.ts';
import { howMeasured } from './stack-measuring.ts';

type NameOf = (name: LengthName) => string;

/** A stack of lengths along the crank, as it is read at the bench; lengths by their names in the file unless told otherwise. */
export const stackText = (result: StackResult, nameOf: NameOf = (name) => name): string =>
  [
    ...wrapped(stackLine(result), ''),
    ...(result.stack.title === '' ? [] : [result.stack.title]),
    ...paragraph(`Along the crank, ${result.stack.units}`, rowLines(result)),
    ...paragraph('To measure', listed(missingTexts(result, nameOf))),
    ...paragraph('What this rests on', listed(grounds(result, nameOf))),
    ...paragraph('Take care', listed(cautions)),
    '',
  ].join('\n');

/** What is added up. */
export const rowNames: Readonly<Record<RowName, string>> = {
  pilot: 'tip in pilot bearing',
  tipGap: 'tip to bottom of crank',
  spline: 'spline in hub',
  releaseGap: 'bearing to fingers',
  strokeLeft: 'stroke to spare',
};

/** Whether shaft, clutch and release gear come together, in one line. */
export function stackLine({ rows, verdict, stack }: StackResult): string {
  const texts = (...states: readonly StackRow['state'][]): string =>
    inWords(rows.filter(({ state }) => states.includes(state)).map((row) => rowText(row, stack.units)));
  switch (verdict) {
    case 'goes':
      return 'GOES: all of it, with every length at its worst.';
    case 'not':
      return `DOES NOT GO: ${texts('fails')}.`;
    case 'undecided':
      return `UNDECIDED: ${texts('undecided', 'missing')}.`;
  }
}

function rowText(row: StackRow, units: Units): string {
  if (row.state === 'missing') return `${rowNames[row.name]} lacks ${counted(row.missing.length, 'length')}`;
  const range = `${fineLength(row.leastMm, units)} to ${fineLength(row.mostMm, units)}`;
  const wanted = row.wantedMm === null ? 'more than 0' : `${fineLength(row.wantedMm, units)} or more`;
  return `${rowNames[row.name]} ${range} where ${wanted} is wanted`;
}

const rowLines = ({ rows, stack: { units } }: StackResult): string[] =>
  columns([
    ['', 'as measured', 'worst case', 'rss', 'wanted', ''],
    ...rows.map((row) => {
      if (row.state === 'missing') return [rowNames[row.name], '', '', '', '', 'missing'];
      const text = (mm: number): string => figure(inUnits(mm, units), units === 'mm' ? 2 : 3);
      return [
        rowNames[row.name],
        text(row.mm),
        `${text(row.leastMm)} to ${text(row.mostMm)}`,
        `±${text(row.rssMm)}`,
        row.wantedMm === null ? 'above 0' : text(row.wantedMm),
        stateText(row.name, row.state),
      ];
    }),
  ]);

function stateText(name: RowName, state: 'holds' | 'fails' | 'undecided'): string {
  if (state === 'undecided') return 'undecided';
  const [holds, fails] = states[name];
  return state === 'holds' ? holds : fails;
}

const states: Readonly<Record<RowName, readonly [holds: string, fails: string]>> = {
  pilot: ['engages', 'TOO SHORT'],
  tipGap: ['clear', 'BOTTOMS'],
  spline: ['engages', 'TOO SHORT'],
  releaseGap: ['clear', 'PRESSES'],
  strokeLeft: ['releases', 'TOO LITTLE'],
};

const missingTexts = ({ rows }: StackResult, nameOf: NameOf): string[] => {
  const missing = new Set(rows.flatMap((row) => (row.state === 'missing' ? row.missing : [])));
  return [...missing].map((name) => `${nameOf(name)}: ${howMeasured[name]}.`);
};

function grounds({ rows, stack: { errorAssumed, units } }: StackResult, nameOf: NameOf): string[] {
  const unasked = rows
    .filter((row) => row.state !== 'missing' && row.wantedMm === null)
    .map(({ name }) => rowNames[name]);
  return [
    'Worst case decides: every length at its limit against you at once. The root of the sum of squares stands beside it, and decides nothing.',
    ...(unasked.length === 0
      ? []
      : [
          `No least value was stated for ${inWords(unasked)}: more than 0 was asked, which touches or holds by a hair. No standard gives one; state yours under "wanted".`,
        ]),
    ...(errorAssumed === null
      ? []
      : [
          `No limit was stated for ${inWords(errorAssumed.of.map(nameOf))}: ±${fineLength(errorAssumed.mm, units)} is taken, as a depth gauge has it (common practice). State "error".`,
        ]),
    'As a disc wears its fingers come back toward the release bearing: leave room for it. Heat, end float and what the clutch moves in between are not in it.',
  ];
}

const cautions = [
  'Lengths only: nothing here says what shaft, spline or clutch will carry.',
  'Never draw the faces together with the bolts: a tip that bottoms breaks the thrust bearing. Slide it home by hand, and feel for the last millimetre.',
  'Never let a gearbox hang on its input shaft.',
];
