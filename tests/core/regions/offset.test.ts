import { describe, expect, it } from 'vitest';
import { polygonLoop, type Region } from '../../../src/geometry/loop.ts';
import { metalOnLeft } from '../../../src/geometry/metal-on-left.ts';
import { regionContains } from '../../../src/geometry/motion/containment.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { offset } from '../../../src/geometry/offset.ts';
import { areaMm2, loopsOf } from '../../../src/geometry/polygons.ts';
import { polar, type Vec, vec } from '../../../src/geometry/vec.ts';
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
    const tree = buildOutlineTree(solid);
    const beyondMm = (p: Vec): number =>
      nearestOnOutline(tree, p).distanceMm * (regionContains(tree, p.x, p.y) ? -1 : 1) - byMm;
    for (const side of ['outside', 'inside'] as const) {
      const { polygons, boundMm } = offset(metalOnLeft(solid), byMm, toleranceMm, side);
      const grown = buildOutlineTree(loopsOf(polygons));
      const corners = polygons.flat();
      for (let i = 0; i < 200; i++) {
        const p =
          i % 2 === 0 || corners.length === 0
            ? vec(random.between(-60, 60), random.between(-60, 60))
            : polar(random.pick(corners), random.magnitude(1e-5, 1), random.between(-4, 4));
        const beyond = beyondMm(p) * (side === 'outside' ? 1 : -1);
        const isIn = regionContains(grown, p.x, p.y) === (side === 'outside');
        if (beyond < -5e-6) expect(isIn, `${p.x}, ${p.y} is missed by ${beyond}`).toBe(true);
        if (beyond > boundMm) expect(isIn, `${p.x}, ${p.y} is held ${beyond} beyond`).toBe(false);
      }
    }
  });
});

/** A scanned outline: hundreds of short edges with noise, now and then with a rough bore. */
function roughStar(random: Random): Region {
  const count = random.whole(30, 500);
  const noise = random.magnitude(0.01, 6);
  const waves = random.whole(0, 9);
  const star = (radius: number) =>
    polygonLoop(
      Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        return polar(
          vec(0, 0),
          radius * (1 + 0.2 * Math.sin(waves * angle)) + noise * random.between(-0.5, 0.5),
          angle,
        );
      }),
    );
  return random.chance(0.3) && noise < 5 ? [star(40), star(16)] : [star(40)];
}
