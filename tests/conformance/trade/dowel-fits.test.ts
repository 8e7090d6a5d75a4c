import { describe, expect, test } from 'vitest';
import { clearanceUm, dowelClasses } from '../../../src/trade/dowel-fits.ts';
import { titled } from '../../support/titled.ts';
import { tradeCases } from './trade-cases.ts';

describe('an m6 dowel in an H7 hole (ISO 286 limits looked up, clearances computed)', () => {
  test.each(titled(tradeCases.dowelsIn.expected))('%s', (_, { size, mostUm, leastUm }) => {
    expect(clearanceUm(dowelClasses.H7[size], dowelClasses.m6[size])).toEqual({ most: mostUm, least: leastUm });
  });
});

test('an h6 or g6 pin always goes into an H7 hole (ISO 286; g6 from memory)', () => {
  for (const pin of [dowelClasses.h6, dowelClasses.g6]) {
    expect(clearanceUm(dowelClasses.H7.small, pin.small).least).toBeGreaterThanOrEqual(0);
    expect(clearanceUm(dowelClasses.H7.large, pin.large).least).toBeGreaterThanOrEqual(0);
  }
});
