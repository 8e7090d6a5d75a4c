import { describe, expect, it } from 'vitest';
import type { Motion } from '../../src/geometry/motion/motion.ts';
import { sweptRegion } from '../../src/geometry/motion/swept-region.ts';
import { loopFaults } from '../../src/geometry/plane/loop-faults.ts';
import { polar, vec } from '../../src/geometry/plane/vec.ts';
import { loopsOf } from '../../src/geometry/polygons/polygons.ts';
import { soundPolygons } from '../../src/geometry/polygons/sound-polygons.ts';
import { offsetFaults, roughStar, sweepFaults } from '../support/judge-regions.ts';
import { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';
import { randomSetting } from '../support/random-settings.ts';

const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

describe('at random points', () => {
  it('offset solids are right on 1500 outlines', () => {
    for (const seed of seeds(1500)) {
      const random = new Random(seed);
      const size = random.pick([5, 20, 100, 200]);
      const solid = random.chance(0.4) ? roughStar(random) : randomRegion(random, size);
      const byMm = random.pick([-1, 1, 1]) * random.magnitude(0.2, size / 5);
      expect(offsetFaults(solid, byMm, random, 200), `seed ${seed}`).toEqual([]);
    }
  });

  it('swept regions are right, and sound, in 300 settings of every kind', () => {
    for (const seed of seeds(300)) {
      const random = new Random(seed);
      const setting = randomSetting(random);
      expect(sweepFaults(setting, random, 40), `seed ${seed}`).toEqual([]);
      const swept = sweptRegion(setting.moving, setting.start, setting.motion, 1e-4);
      expect(loopFaults(loopsOf(soundPolygons(swept.polygons, 'outside').polygons)), `seed ${seed}`).toEqual([]);
    }
  });

  it('and about poles as far as 1e12 mm', () => {
    for (const seed of seeds(100)) {
      const random = new Random(seed);
      const awayMm = random.magnitude(1e3, 1e12);
      const pole = polar(vec(0, 0), awayMm, random.between(-4, 4));
      const motion: Motion = {
        kind: 'turn',
        pole,
        angleRad: (random.pick([-1, 1]) * random.magnitude(1e-9, 200)) / awayMm,
      };
      expect(sweepFaults({ ...randomSetting(random), motion }, random, 30), `seed ${seed}`).toEqual([]);
    }
  });

  it('and by turns as small as 1e-9 and just below and beyond a circle', () => {
    for (const seed of seeds(100)) {
      const random = new Random(seed);
      const pole = vec(random.between(-300, 300), random.between(-300, 300));
      const angle = random.pick([1e-9, 1e-6, 1e-4, 0.01, 6.2, 6.283, 6.2831853, 6.29, 17]);
      const motion: Motion = { kind: 'turn', pole, angleRad: random.pick([-1, 1]) * angle };
      expect(sweepFaults({ ...randomSetting(random), motion }, random, 30), `seed ${seed}`).toEqual([]);
    }
  });
});
