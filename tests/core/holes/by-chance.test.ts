import { describe, expect, it } from 'vitest';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { expectedByChance } from '../../../src/holes/patterns/by-chance.ts';

const options = { reachMm: 1.5, centred: false };
const corners = [vec(0, 0), vec(400, 0), vec(400, 300), vec(0, 300)];

/** Poisson's law by its head, for means at which that loses no digits. */
function oneMinusHead(mean: number, least: number): number {
  let [head, term] = [0, Math.exp(-mean)];
  for (let k = 0; k < least; k++) {
    head += term;
    term *= mean / (k + 1);
  }
  return 1 - head;
}

describe('what strewn holes would do by chance', () => {
  it.each([1, 2, 3])(
    'is the tail of Poisson’s law from %i on, a trial each (computed the other way round)',
    (further) => {
      const mean = (100 * 2 * Math.PI * 1.5 ** 2) / (403 * 303);
      const byHead = oneMinusHead(mean, further);
      expect(Math.abs(expectedByChance(corners, 102, further, 10, options) / (10 * byHead) - 1)).toBeLessThan(1e-6);
    },
  );

  it('is every trial where no further hole is asked for', () => {
    expect(expectedByChance(corners, 4, 0, 12, options)).toBe(12);
  });

  it('is nothing to speak of, and still a number, for hundreds of holes in all', () => {
    const many = Array.from({ length: 500 }, (_, i) => vec(20 * (i % 25), 20 * Math.floor(i / 25)));
    expect(expectedByChance(many, 500, 498, 1e5, options)).toBeLessThan(1e-100);
    expect(expectedByChance(many, 500, 1, 1e5, options)).toBeLessThanOrEqual(1e5);
  });
});
