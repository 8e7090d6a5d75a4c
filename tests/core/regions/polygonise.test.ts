import { describe, expect, it } from 'vitest';
import { regionContains } from '../../../src/geometry/motion/containment.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { lerp, type Vec } from '../../../src/geometry/plane/vec.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { regionAreaMm2, regionOverlapAreaMm2 } from '../../../src/geometry/polygons/region-measures.ts';
import { Random } from '../../support/random.ts';
import { randomRegion } from '../../support/random-outlines.ts';
import { box, disc, path, ringSector, wallRound } from '../../support/shapes.ts';

const toleranceMm = 1e-3;

describe('a region as polygons', () => {
  it.each(Array.from({ length: 60 }, (_, i) => i))('keeps to its side, within the tolerance, on outline %i', (seed) => {
    const region = randomRegion(new Random(seed), 80);
    const tree = buildOutlineTree(region);
    const outwardMm = (p: Vec): number =>
      nearestOnOutline(tree, p).distanceMm * (regionContains(tree, p.x, p.y) ? -1 : 1);
    for (const side of ['outside', 'inside'] as const) {
      const points = polygonise(region, toleranceMm, side).flatMap((polygon) =>
        polygon.flatMap((p, i) => [p, lerp(p, polygon[(i + 1) % polygon.length] as Vec, 0.5)]),
      );
      const errors = points.map(outwardMm).map((mm) => (side === 'outside' ? mm : -mm));
      expect(Math.min(...errors)).toBeGreaterThan(-1e-9);
      expect(Math.max(...errors)).toBeLessThan(toleranceMm + 1e-9);
    }
  });

  it('runs metal on the left whichever way its loops were drawn', () => {
    const ring = wallRound(0, 0, 3, 5).map((loop) => polygonise([loop], toleranceMm, 'inside')[0] ?? []);
    const bothWays = [ring, ring.map((r) => r.toReversed())];
    for (const rings of bothWays) {
      const loops = rings.map((r) => path(...r.map(({ x, y }) => [x, y] as const)));
      expect(areaMm2(polygonise(loops, toleranceMm, 'inside'))).toBeCloseTo(Math.PI * 16, 1);
    }
  });
});

describe('areas of regions with arcs, in closed form', () => {
  it.each([
    { name: 'a disc', region: disc(3, 4, 5), expected: Math.PI * 25 },
    { name: 'a ring', region: wallRound(1, 1, 3, 5), expected: Math.PI * 16 },
    {
      name: 'a ring with an island in its bore',
      region: [...wallRound(0, 0, 3, 5), ...disc(0, 0, 1)],
      expected: Math.PI * 17,
    },
    {
      name: 'a piece of a ring',
      region: ringSector(190, 205, 88, 92),
      expected: ((205 ** 2 - 190 ** 2) / 2) * (Math.PI / 45),
    },
    { name: 'a box', region: box(-2, -1, 4, 5), expected: 36 },
    { name: 'two vertices and two half circles', region: [path([-1, 0, 1], [1, 0, 1])], expected: Math.PI },
  ])('$name', ({ region, expected }) => {
    expect(regionAreaMm2(region)).toBeCloseTo(expected, 9);
  });

  it('two circles share a lens', () => {
    // 2r²·acos(d/2r) − ½d·√(4r² − d²)
    const lens = 2 * 100 * Math.acos(0.6) - 6 * 16;
    expect(regionOverlapAreaMm2(disc(0, 0, 10), disc(12, 0, 10), 1e-5)).toBeCloseTo(lens, 3);
  });
});
