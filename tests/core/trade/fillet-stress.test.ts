import { describe, expect, it } from 'vitest';
import { filletStressFactor } from '../../../src/trade/fillet-stress.ts';

const bar = { wideMm: 40, narrowMm: 30 };

describe('the stress concentration of a fillet in a shouldered flat bar in tension', () => {
  // computed elsewhere from Peterson's polynomials, which were looked up; to three decimals
  it.each([
    [10, 1.571],
    [5, 1.817],
    [2.5, 2.17],
    [1, 2.861],
  ])('of %f mm, 40 mm stepped to 30, is %f', (radiusMm, expected) => {
    expect(filletStressFactor(bar, radiusMm)).toBeCloseTo(expected, 3);
  });

  it('falls as the fillet grows, all through what the polynomials cover', () => {
    const factors = Array.from({ length: 199 }, (_, i) => filletStressFactor(bar, 0.25 * (i + 1)) ?? Number.NaN);
    for (const [i, factor] of factors.slice(1).entries()) expect(factor).toBeLessThan(factors[i] as number);
  });

  it('is one curve: the two sets of polynomials meet within half a hundredth at a step of two radii', () => {
    const [below, above] = [filletStressFactor(bar, 2.5), filletStressFactor(bar, 2.5 - 1e-9)];
    expect(Math.abs((above ?? 0) / (below ?? 0) - 1)).toBeLessThan(0.005);
  });

  it('depends on the shape alone, not on its size', () => {
    expect(filletStressFactor({ wideMm: 80, narrowMm: 60 }, 10)).toBeCloseTo(filletStressFactor(bar, 5) ?? 0, 12);
  });

  it.each([0, 0.249, 50.1, -1, Number.NaN])('is not told of %f mm, which they do not cover', (radiusMm) => {
    expect(filletStressFactor(bar, radiusMm)).toBeNull();
  });
});
