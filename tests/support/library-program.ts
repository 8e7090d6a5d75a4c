import { expect } from 'vitest';
import { tsBlocks } from './examples.ts';

/** The program that the README shows a stranger. */
export const readmeProgram = (): string => tsBlocks('README.md').join('\n');

/**
 * What it must print, in closed form: the roller's near side stays at 220 − 12 mm from the centre of the turn, the rib
 * reaches out as far as its corner (5, 204), and they are nearest when the two are in line.
 */
export function expectReadmePrinted(printed: readonly string[]): void {
  const gapMm = 220 - 12 - Math.hypot(5, 204);
  const turnDeg = (Math.atan2(204, 5) * 180) / Math.PI;
  expect(printed).toEqual([
    `clear: ${gapMm.toFixed(6)} mm, to within 0.000001 mm`,
    `nearest ${turnDeg.toFixed(3)}° round, to [5.0,204.0]`,
  ]);
}
