import type { BoreDoubt, BoreLimit, BoreResult } from '../bore/bore-result.ts';
import { boreLines, dowelTexts, faceLines, readingLines } from './bore-tables.ts';
import { dialMm, limitText, towardText } from './dial-words.ts';
import { inWords, listed, paragraph, wrapped } from './layout.ts';
import { sourceText } from './source-text.ts';

/** A bore against the crank, as it is read at the bench: the verdict, the offset, how round, and which dowels. */
export const boreText = (result: BoreResult): string =>
  [
    ...wrapped(boreLine(result), ''),
    ...paragraph('The bore', boreLines(result)),
    ...paragraph('The face', result.face === null ? [] : faceLines(result.face, result.request.limit)),
    ...paragraph('Readings, mm', readingLines(result.bore)),
    ...paragraph('Readings of the face, mm', result.face === null ? [] : readingLines(result.face)),
    ...paragraph('What they tell', listed(tellTexts(result))),
    ...paragraph('Offset dowels', listed(dowelTexts(result))),
    ...paragraph('What this rests on', listed(grounds(result))),
    ...paragraph('Take care', listed(cautions)),
    '',
  ].join('\n');

/** Whether the bore is in line with the crank, in one line. */
export function boreLine(result: BoreResult): string {
  const { verdict, offMm, bore, limitMm, against, face } = result;
  const off = `the bore's centre is ${dialMm(offMm)} off the crank, ±${dialMm(bore.onceBoundMm)}`;
  const allowed = `${limitText(limitMm)} allowed`;
  switch (verdict) {
    case 'good':
      return `IN LINE: ${off}; ${allowed}.`;
    case 'not': {
      const what = [
        ...(against.includes('off-centre') ? [`${off}, ${allowed}`] : []),
        ...(against.includes('face-tilted') && face !== null
          ? [`the face runs out by ${dialMm(2 * face.slope * face.radiusMm)}, ${limitText(2 * limitMm)} allowed`]
          : []),
      ];
      return `OUT OF LINE: ${what.join('; ')}.`;
    }
    case 'undecided':
      return `UNDECIDED: ${inWords(result.doubts.map((doubt) => doubtText(result, doubt)))}.`;
  }
}

function doubtText(result: BoreResult, doubt: BoreDoubt): string {
  const { bore, face, limitMm, offMm, outOfRound } = result;
  const { limit, errorMm } = result.request;
  switch (doubt) {
    case 'bore-not-closing':
    case 'face-not-closing': {
      const [what, closureMm] = doubt === 'bore-not-closing' ? ['bore', bore.closureMm] : ['face', face?.closureMm];
      return `the readings of the ${what} do not close: the first place reads ${dialMm(Math.abs(closureMm ?? 0))} ${(closureMm ?? 0) > 0 ? 'more' : 'less'} at the end, and ${dialMm(2 * errorMm)} is what two readings may differ by`;
    }
    case 'bore-noise':
      return `the offset is known to ±${dialMm(bore.onceBoundMm)} only, which is more than the ${limitText(limitMm)} allowed`;
    case 'face-noise':
      return `the face is known to ±${dialMm(2 * (face?.onceBoundMm ?? 0))} only, which is more than the ${limitText(limit.tirMm)} allowed`;
    case 'bore-too-near':
      return `the offset, ${dialMm(offMm)} ±${dialMm(bore.onceBoundMm)}, is too near to the ${limitText(limitMm)} allowed to tell`;
    case 'face-too-near':
      return `the tilt of the face is too near to the ${limitText(limit.tirMm)} of run-out allowed to tell`;
    case 'out-of-round':
      return `TIR is ${dialMm(bore.tirMm)}${outOfRound === null ? '' : ` and the diameters differ by ${dialMm(outOfRound.mm)}`} where the rule has ${limitText(limit.tirMm)}: that is the bore's own shape, and no offset`;
    case 'face-not-flat':
      return `the face's TIR is ${dialMm(face?.tirMm ?? 0)} where the rule has ${limitText(limit.tirMm)}: that is the face's own shape, and no tilt`;
  }
}

/** What is remarkable about the readings. */
function tellTexts(result: BoreResult): string[] {
  const { bore, offMm, sumsDifferMm, outOfRound, request } = result;
  const { errorMm } = request;
  const twiceOff = 2 * offMm;
  const differ = bore.tirMm - twiceOff;
  const isOval = outOfRound !== null && outOfRound.mm > outOfRound.boundMm;
  return [
    ...(Math.abs(differ) <= 2 * errorMm
      ? ['TIR is twice the offset, as it is in a round bore.']
      : [
          `TIR is not twice the offset here (${dialMm(bore.tirMm)} against ${dialMm(twiceOff)}), as it is in a round bore read at its highest and lowest: ${
            isOval
              ? 'the bore is out of round, and half of TIR is no offset'
              : differ < 0
                ? 'those lie between the places that were read'
                : 'the readings have more in them than an offset'
          }.`,
        ]),
    ...(sumsDifferMm === null ? [] : [sumsText(result, sumsDifferMm)]),
    ...(bore.twice === null
      ? [
          'Four places that are no quarters of a turn apart cannot part offset from out of round: what is left counts as error. Read five or more.',
        ]
      : []),
    ...(bore.noiseMm !== null && bore.noiseMm > errorMm
      ? [
          `What is left scatters by ±${dialMm(bore.noiseMm)}, more than the ±${dialMm(errorMm)} of a reading: the larger is reckoned with. A dent, a burr or a slack rig?`,
        ]
      : []),
    ...closedTexts(result),
  ];
}

function sumsText({ bore, outOfRound }: BoreResult, differMm: number): string {
  const [a, b, c, d] = clockwise(bore.readings.map(({ angleRad }) => angleRad)).map(towardText);
  const pairs = `${a} and ${c} add up to ${Math.abs(differMm) < 5e-4 ? 'as much as' : `${dialMm(Math.abs(differMm))} ${differMm > 0 ? 'more' : 'less'} than`} ${b} and ${d}`;
  if (Math.abs(differMm) <= (outOfRound?.boundMm ?? 0))
    return `${pairs}: they agree within the readings' errors, as in a round bore.`;
  return `${pairs}, and in a round bore they agree: by so much one of the two diameters is the wider.`;
}

/** Directions in the order of the clock, from the first on. */
function clockwise(angles: readonly number[]): number[] {
  const fullTurn = 2 * Math.PI;
  const after = (angle: number): number => ((((angles[0] ?? 0) - angle) % fullTurn) + fullTurn) % fullTurn;
  return [...angles].sort((one, other) => after(one) - after(other));
}

function closedTexts({ bore, face }: BoreResult): string[] {
  const untold = [...(bore.closureMm === null ? ['bore'] : []), ...(face?.closureMm === null ? ['face'] : [])];
  return untold.length === 0
    ? []
    : [
        `The first place of the ${inWords(untold)} was not read again at the end: whether the dial held its zero is not known.`,
      ];
}

const grounds = ({ request: { sagMm, limit, errorMm } }: BoreResult): string[] => [
  `Allowed is a TIR of ${limitText(limit.tirMm)}, ${limitOf(limit)}, and so half of it off the centre.`,
  "Plus is plunger pressed in, the surface nearer; places are seen looking at the block's face, angles anticlockwise from 3 o'clock.",
  sagMm === 0
    ? 'No sag was stated: a rig that droops shows the bore too high by half of what it loses between above and below.'
    : `Sag of ${dialMm(sagMm)} is taken off the bore's readings: nothing at 12 o'clock, half at 3 and 9, all at 6.`,
  `A reading is taken to ±${dialMm(errorMm)}, and bounds have all of them at their worst at once. A bore with three lobes or more reads like an offset at so few places.`,
];

function limitOf({ of, flange, source }: BoreLimit): string {
  switch (of) {
    case 'gearbox':
      return `the rule for the bores of car gearboxes (${sourceText(source)})`;
    case 'flange':
      return `the run-out of bore and face of SAE flange No. ${flange} (${sourceText(source)})`;
    case 'stated':
      return 'as you stated';
  }
}

const cautions = [
  'Geometry only: nothing here approves a gearbox, a clutch or a vehicle.',
  'Take the plugs out and turn the crank by hand, always the same way; for the face hold it to one end of its float. Bolts to their torque, dowels in, faces clean.',
];
