import { describe, expect, test } from 'vitest';
import { clearanceUm, dowelClasses } from '../../../src/trade/dowel-fits.ts';
import { titled } from '../../support/titled.ts';
import { tradeCases } from './trade-cases.ts';

describe('an m6 dowel in an H7 hole (ISO 286 limits looked up, clearances computed)', () => {
  test.each(titled(tradeCases.dowelsIn.expected))('%s', (_, { size, mostUm, leastUm }) => {
    expect(clearanceUm(dowelClasses.H7[size], dowelClasses.m6[size])).toEqual({ most: mostUm, least: leastUm });
  });
});

describe('a pin no larger than its hole (ISO 286; g6 from memory)', () => {
  test.each(titled(tradeCases.pinsThatAlwaysGoIn.expected))('%s', (_, { pin, hole, size, leastUmAtLeast }) => {
    expect(clearanceUm(dowelClasses[hole][size], dowelClasses[pin][size]).least).toBeGreaterThanOrEqual(leastUmAtLeast);
  });
});
