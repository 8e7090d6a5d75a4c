import { length } from '../geometry/plane/vec.ts';
import { figure, fineLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Bolt } from '../joint/bolts.ts';
import type { Hand } from '../joint/hand.ts';
import type { Joint } from '../joint/joint.ts';
import { columns, wrapped } from './layout.ts';
import { axisName, shortName } from './names.ts';
import { degreesOf } from './units.ts';

/** How the two parts dowelled up. */
export const dowelLines = (joint: Joint): string[] => wrapped(dowelText(joint));

export function dowelText(joint: Joint): string {
  const { fit, dowelUp } = joint;
  const { units } = fit;
  const { pairs, spacingErrorMm, hand, turnRad } = dowelUp;
  if (pairs.length === 0) return 'None paired: the moving drawing was taken as drawn about the axis, up as up.';
  const offsets = pairs.map(
    ({ fixed, moving, offsetMm }) => `${fixed}–${moving} off by ${fineLength(offsetMm, units)}`,
  );
  const spacing = spacingErrorMm === null ? '' : ` ${spacingText(spacingErrorMm, units)}`;
  const tilt = ` The moving drawing was turned ${figure(degreesOf(turnRad), 2)}° to fit.`;
  return `${offsets.join(', ')}.${spacing}${pairs.length > 1 ? tilt : ''} ${[handText(hand), ...boreTexts(joint)].join(' ')}`;
}

/** A bore of the moving part so near the axis is meant to stand on it, mm. */
const nearAxisMm = 5;

/** How far off the axis a shaft's bore lies by the tracing, which is no measure of it. */
const boreTexts = (joint: Joint): string[] =>
  joint.moving.holes
    .filter(({ kind, at }) => kind === 'bore' && length(at) <= nearAxisMm)
    .map(
      ({ id, at }) =>
        `"${id}" of ${shortName(joint.moving)} stands ${fineLength(length(at), joint.fit.units)} from ${axisName(joint)} by the tracing: tracing cannot decide this, put an indicator on it.`,
    );

function spacingText(spacingErrorMm: number, units: Units): string {
  const by = fineLength(Math.abs(spacingErrorMm), units);
  if (by === fineLength(0, units)) return `Their spacings agree to ${fineLength(0.01, units)}.`;
  return `Their spacing is ${by} ${spacingErrorMm < 0 ? 'shorter' : 'longer'} in the moving part.`;
}

function handText(hand: Hand): string {
  switch (hand) {
    case 'agrees':
      return 'The hand agrees.';
    case 'mirrored':
      return 'ONE DRAWING IS MIRRORED.';
    case 'cannot-tell':
      return 'These holes cannot tell the hand.';
  }
}

/** Each bolt: how far off, how far it may be. */
export const boltLines = ({ fit: { units }, bolts }: Joint): string[] =>
  columns(
    bolts.map((bolt) => [
      `${bolt.fixed}–${bolt.moving}`,
      `off by ${fineLength(bolt.offsetMm, units)}`,
      bolt.allowedMm === null ? 'allowed: not known' : `allowed ${fineLength(bolt.allowedMm, units)}`,
      lineUpText(bolt),
    ]),
  );

/** The same as cells, headings first. */
export const boltRows = ({ fit: { units }, bolts }: Joint): string[][] => [
  ['bolt', 'off by', 'may be off by', ''],
  ...bolts.map((bolt) => [
    `${bolt.fixed}–${bolt.moving}`,
    fineLength(bolt.offsetMm, units),
    bolt.allowedMm === null ? 'not known' : fineLength(bolt.allowedMm, units),
    lineUpText(bolt),
  ]),
];

function lineUpText({ linesUp }: Bolt): string {
  if (linesUp === null) return 'cannot be told';
  return linesUp ? 'lines up' : 'DOES NOT LINE UP';
}
