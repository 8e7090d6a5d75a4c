import { describe, expect, it } from 'vitest';
import { engineErrorMm, union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { rectangle } from '../../../src/geometry/polygons/solid-near.ts';
import { stepsOfUnion, unionOfMany } from '../../../src/geometry/polygons/union-of-many.ts';

/** Squares of 10 mm along a wave, each over its neighbours. */
const wave = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const [x, y] = [i * 0.7, 5 * Math.sin(i / 9)];
    return [rectangle({ minX: x, minY: y, maxX: x + 10, maxY: y + 10 })];
  });

describe('a union of many solids', () => {
  it.each([1, 2, 16, 17, 150, 1000])('of %i is what it is all at once', (count) => {
    const solids = wave(count);
    const united = areaMm2(unionOfMany(solids));
    const errorMm2 = 4 * stepsOfUnion(count) * engineErrorMm * (count + 20);
    expect(Math.abs(united - areaMm2(union(solids.flat())))).toBeLessThan(errorMm2);
  });

  it('goes through the engine once where they are few, and a time more for each eightfold of them', () => {
    expect([1, 16, 17, 128, 129, 1000].map(stepsOfUnion)).toEqual([1, 1, 2, 2, 3, 3]);
  });
});
