import type { BoreLimit, BoreRead, BoreResult, FaceRead } from '../bore/bore-result.ts';
import { angleOf, length, type Vec } from '../geometry/plane/vec.ts';
import { figure } from '../job/length-text.ts';
import { dialMm, limitText, towardText } from './dial-words.ts';
import { columns } from './layout.ts';
import { sourceText } from './source-text.ts';

/** The bore's figures, a row each. */
export function boreLines({ bore, offset, offMm, outOfRound, limitMm, request: { limit } }: BoreResult): string[] {
  return columns([
    ['TIR', dialMm(bore.tirMm), 'highest less lowest reading'],
    ['off the crank', boundText(offMm, bore.onceBoundMm), wayText(offset, bore.onceBoundMm)],
    ['right, up', `${figure(offset.x, 3)}, ${dialMm(offset.y)}`, ''],
    ['allowed', limitText(limitMm), `half of TIR ${Number(limit.tirMm.toFixed(4))} mm`],
    ...(outOfRound === null || bore.twice === null
      ? []
      : [
          [
            'out of round',
            boundText(outOfRound.mm, outOfRound.boundMm),
            outOfRound.mm > outOfRound.boundMm
              ? `in diameter${bore.twice.inFull ? '' : ' or more'}, widest toward ${towardText(bore.twice.lowestRad)}`
              : 'in diameter, less than the readings tell',
          ],
        ]),
  ]);
}

const boundText = (mm: number, boundMm: number): string => `${figure(mm, 3)} ±${dialMm(boundMm)}`;

const wayText = (way: Vec, boundMm: number): string =>
  length(way) > boundMm ? `toward ${towardText(angleOf(way))}` : 'toward no side that the readings tell';

/** The face's figures, a row each. */
export const faceLines = (face: FaceRead, limit: BoreLimit): string[] =>
  columns([
    ['TIR', dialMm(face.tirMm), `at ${Number(face.radiusMm.toFixed(2))} mm from the crank`],
    [
      'out of square',
      `${figure(100 * face.slope, 3)} ±${figure(100 * face.slopeBound, 3)} mm per 100 mm`,
      length(face.once) > face.onceBoundMm
        ? `stands out most toward ${towardText(angleOf(face.once))}`
        : 'less than the readings tell',
    ],
    limit.of === 'flange'
      ? ['allowed', limitText(limit.tirMm), 'of TIR, where it was read']
      : ['allowed', 'not known', 'no rule for it but that of --flange'],
  ]);

/** Each reading, what it is without sag, and what no offset or out of round explains of it. */
export const readingLines = ({ readings, leftMm }: BoreRead): string[] =>
  columns([
    ['place', 'read', 'less sag', 'not explained'],
    ...readings.map(({ angleRad, readMm, trueMm }, i) => [
      towardText(angleRad),
      figure(readMm, 3),
      figure(trueMm, 3),
      figure(leftMm[i] ?? 0, 3),
    ]),
  ]);

/** What the eccentric dowels that are sold would leave. */
export function dowelTexts({ dowels, offset, offMm, bore, limitMm, centre }: BoreResult): string[] {
  if (!bore.closes) return ['None until the readings close.'];
  if (centre === 'within') return ['None are needed for the centre of the bore.'];
  if (offMm <= bore.onceBoundMm) return ['None: there is no offset that the readings tell.'];
  const back = towardText(angleOf(offset) + Math.PI);
  const { sizes, best, source } = dowels;
  const sold = `Sold are ${sizes.map(({ inch }) => inch.toFixed(3)).join(', ')} in (${sourceText(source)})`;
  return [
    `To take out: ${dialMm(offMm)} (${(offMm / 25.4).toFixed(4)} in). Turn the eccentric ends of both dowels toward ${back}: the housing goes there, and its bore with it.`,
    `${sold}: ${sizes.map(({ inch, leftMm }) => `${inch.toFixed(3)} in leaves ${dialMm(leftMm)}`).join(', ')}.`,
    best === null
      ? 'None of them leaves less than there is.'
      : `Take ${best.inch.toFixed(3)} in: ${dialMm(best.leftMm)} ±${dialMm(bore.onceBoundMm)} are left, ${
          best.within ? 'within' : best.leftMm > limitMm ? 'still more than' : 'too near to tell from'
        } the ${limitText(limitMm)} allowed. Read it again with them in.`,
  ];
}
