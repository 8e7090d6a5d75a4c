import { describe, expect, test } from 'vitest';
import { clearanceUm, dowelClasses } from '../../../src/trade/dowel-fits.ts';

describe('an m6 dowel in an H7 hole (ISO 286 limits looked up, clearances computed)', () => {
  test('of Ø 8–10: 9 µm clearance to 15 µm interference', () => {
    expect(clearanceUm(dowelClasses.H7.small, dowelClasses.m6.small)).toEqual({ most: 9, least: -15 });
  });

  test('of Ø 12–16: 11 µm clearance to 18 µm interference', () => {
    expect(clearanceUm(dowelClasses.H7.large, dowelClasses.m6.large)).toEqual({ most: 11, least: -18 });
  });
});

test('an h6 or g6 pin always goes into an H7 hole (ISO 286; g6 from memory)', () => {
  for (const pin of [dowelClasses.h6, dowelClasses.g6]) {
    expect(clearanceUm(dowelClasses.H7.small, pin.small).least).toBeGreaterThanOrEqual(0);
    expect(clearanceUm(dowelClasses.H7.large, pin.large).least).toBeGreaterThanOrEqual(0);
  }
});
