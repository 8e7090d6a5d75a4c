import { describe, expect, it } from 'vitest';
import { deviateOfChiSquared, radiusHolding } from '../../../src/trial/spread.ts';

describe('the radius that holds a point of two normal coordinates', () => {
  it.each([
    {
      variances: [1, 1],
      expected: Math.sqrt(-2 * Math.log(0.05)),
      source: 'Rayleigh distribution, closed form (computed)',
    },
    { variances: [1, 0], expected: 1.959964, source: 'the normal deviate of 95 % to both sides (from memory)' },
    {
      variances: [4, 4],
      expected: 2 * Math.sqrt(-2 * Math.log(0.05)),
      source: 'twice as far for twice the spread (computed)',
    },
  ])('is $expected for variances $variances', ({ variances: [v1 = 0, v2 = 0], expected }) => {
    // 64 steps of a quarter turn: exact for even spreads, within 0.03 where one is nothing
    expect(radiusHolding(0.95, v1, v2)).toBeCloseTo(expected, v1 === v2 ? 9 : 1);
  });
});

describe('the deviate that a χ² stands for', () => {
  it.each([
    { chiSquared: 9.488, degrees: 4, deviate: 1.645 },
    { chiSquared: 18.307, degrees: 10, deviate: 1.645 },
    { chiSquared: 29.588, degrees: 10, deviate: 3.09 },
    { chiSquared: 3.94, degrees: 10, deviate: -1.645 },
  ])('of $chiSquared with $degrees degrees of freedom is $deviate', ({ chiSquared, degrees, deviate }) => {
    // source: the usual tables of χ² at 95, 95, 99.9 and 5 % (from memory); the cube root is good to some hundredths
    expect(Math.abs(deviateOfChiSquared(chiSquared, degrees) - deviate)).toBeLessThan(0.04);
  });
});
