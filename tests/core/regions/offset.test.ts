import { describe, expect, it } from 'vitest';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { metalOnLeft } from '../../../src/geometry/polygons/metal-on-left.ts';
import { offset } from '../../../src/geometry/polygons/offset.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { offsetFaults, roughStar } from '../../support/judge-regions.ts';
import { Random } from '../../support/random.ts';
import { randomRegion } from '../../support/random-outlines.ts';
import { box, disc, wallRound } from '../../support/shapes.ts';

const toleranceMm = 1e-4;

/** Steiner: grown by c, a convex shape of area A and outline L covers A + Lc + πc². */
const closedForms: readonly { name: string; solid: Region; byMm: number; areaMm2: number }[] = [
  { name: 'a box grown by 2', solid: box(0, 0, 10, 5), byMm: 2, areaMm2: 50 + 60 + Math.PI * 4 },
  { name: 'a box shrunk by 1', solid: box(0, 0, 10, 3), byMm: -1, areaMm2: 8 },
  { name: 'a box shrunk away', solid: box(0, 0, 10, 3), byMm: -1.6, areaMm2: 0 },
  { name: 'a disc grown', solid: disc(7, 1, 10), byMm: 2, areaMm2: Math.PI * 144 },
  { name: 'a ring grown keeps its bore', solid: wallRound(0, 0, 5, 10), byMm: 2, areaMm2: Math.PI * (144 - 9) },
  { name: 'a ring grown by its bore closes', solid: wallRound(0, 0, 2, 10), byMm: 2, areaMm2: Math.PI * 144 },
  { name: 'a ring shrunk', solid: wallRound(0, 0, 5, 10), byMm: -2, areaMm2: Math.PI * (64 - 49) },
  {
    name: 'two discs grown into one, less the lens they share',
    solid: [...disc(0, 0, 2), ...disc(5, 0, 2)],
    byMm: 1,
    areaMm2: 2 * Math.PI * 9 - (18 * Math.acos(5 / 6) - 2.5 * Math.sqrt(11)),
  },
];

describe('an offset solid', () => {
  it.each(closedForms)('has its closed-form area: $name', ({ solid, byMm, areaMm2: expected }) => {
    for (const side of ['outside', 'inside'] as const) {
      const { polygons, boundMm } = offset(metalOnLeft(solid), byMm, toleranceMm, side);
      // outlines here are under 100 mm long
      expect(Math.abs(areaMm2(polygons) - expected)).toBeLessThan(100 * boundMm);
      if (side === 'outside') expect(areaMm2(polygons)).toBeGreaterThan(expected - 1e-4);
      else expect(areaMm2(polygons)).toBeLessThan(expected + 1e-4);
    }
  });

  it.each(Array.from({ length: 50 }, (_, i) => i))('holds just the points within reach, outline %i', (seed) => {
    const random = new Random(seed);
    const solid = random.chance(0.5) ? roughStar(random) : randomRegion(random, random.pick([5, 40]));
    const byMm = random.pick([-1, 1, 1]) * random.magnitude(0.2, 8);
    expect(offsetFaults(solid, byMm, random, 200)).toEqual([]);
  });
});
