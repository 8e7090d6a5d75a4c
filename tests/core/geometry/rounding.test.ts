import fc from 'fast-check';
import { expect, test } from 'vitest';
import { round6, roundPoint6, roundUp6 } from '../../../src/geometry/plane/rounding.ts';

const length = fc.double({ min: -1e5, max: 1e5, noNaN: true });

test('rounding moves a length by at most half a millionth and is done once', () => {
  fc.assert(
    fc.property(length, (x) => {
      expect(Math.abs(round6(x) - x)).toBeLessThanOrEqual(0.5e-6 + 1e-10);
      expect(round6(round6(x))).toBe(round6(x));
    }),
  );
});

test('nothing is rounded to minus nothing', () => {
  for (const x of [-0, -1e-9, -0.4e-6]) expect(Object.is(round6(x), 0)).toBe(true);
  expect(Object.is(roundUp6(-0.4e-6), 0)).toBe(true);
  expect(roundPoint6({ x: -1e-9, y: 1.23456789 })).toEqual([0, 1.234568]);
});

test('rounding up never understates and overstates by less than a millionth', () => {
  fc.assert(
    fc.property(length, (x) => {
      expect(roundUp6(x)).toBeGreaterThanOrEqual(x);
      expect(roundUp6(x) - x).toBeLessThan(1e-6 + 1e-10);
      expect(roundUp6(roundUp6(x))).toBe(roundUp6(x));
    }),
  );
  expect(roundUp6(1e-12)).toBe(1e-6);
  expect(roundUp6(7e-6)).toBe(7e-6);
});
