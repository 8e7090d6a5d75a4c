import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { coreOf, isThicker } from '../../../src/plan/bands/core.ts';
import { box, disc } from '../../support/jobs.ts';
import { Random } from '../../support/random.ts';
import { randomRegion } from '../../support/random-outlines.ts';

const strip = (widthMm: number) => polygonise([box(0, 0, 50, widthMm)], 1e-4, 'inside');

describe('metal thicker than a film', () => {
  it('is told of strips on either side of the thickness', () => {
    expect(isThicker(strip(0.1), 0.2)).toBe(false);
    expect(isThicker(strip(0.19), 0.2)).toBe(false);
    expect(isThicker(strip(0.22), 0.2)).toBe(true);
    expect(isThicker([], 0.2)).toBe(false);
  });

  it('is told of a comb of thin teeth, long as it is round, only where its back is thick', () => {
    const comb = (backMm: number) => {
      const teeth = Array.from({ length: 200 }, (_, i) => box(i, 0, i + 0.1, 20));
      return union(polygonise([...teeth, box(0, -backMm, 200, 0)], 1e-4, 'inside'));
    };
    expect(isThicker(comb(0.1), 0.25)).toBe(false);
    expect(isThicker(comb(1), 0.25)).toBe(true);
  });

  it('is told of a ring by its wall, not by its size', () => {
    const ring = (wallMm: number) => union(polygonise([disc(0, 0, 80), disc(0, 0, 80 - wallMm)], 1e-3, 'inside'));
    expect(isThicker(ring(0.4), 0.5)).toBe(false);
    expect(isThicker(ring(0.6), 0.5)).toBe(true);
  });

  it('is what a core says, of random shapes and thicknesses', () => {
    const random = new Random(31);
    const seen = { thick: 0, thin: 0 };
    for (let i = 0; i < 300; i++) {
      const metal = union(polygonise(randomRegion(random, random.between(2, 30)), 1e-3, 'inside'));
      const thickMm = random.between(0.01, 12);
      const told = isThicker(metal, thickMm);
      expect(told, `shape ${i}, ${thickMm} mm`).toBe(coreOf(metal, thickMm) !== null);
      seen[told ? 'thick' : 'thin'] += 1;
    }
    expect(Math.min(seen.thick, seen.thin)).toBeGreaterThan(30);
  });
});
