import { expect, it } from 'vitest';
import { mostError } from '../../../src/bore/most-error.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { Random } from '../../support/random.ts';

it('is the largest over every choice of signs, of some 300 random sets of weights', () => {
  const random = new Random(7);
  for (let i = 0; i < 300; i++) {
    const weights = Array.from({ length: random.whole(1, 9) }, () =>
      random.chance(0.1) ? vec(0, random.between(-1, 1)) : vec(random.between(-1, 1), random.between(-1, 1)),
    );
    const largest = Math.max(
      ...Array.from({ length: 2 ** weights.length }, (_, signs) => {
        const sign = (k: number): number => ((signs >> k) & 1 ? 1 : -1);
        const x = weights.reduce((sum, weight, k) => sum + sign(k) * weight.x, 0);
        const y = weights.reduce((sum, weight, k) => sum + sign(k) * weight.y, 0);
        return Math.hypot(x, y);
      }),
    );
    expect(mostError(weights)).toBeCloseTo(largest, 12);
  }
});

it('of no weights, or of none but nothing, is nothing', () => {
  expect(mostError([])).toBe(0);
  expect(mostError([vec(0, 0)])).toBe(0);
});
