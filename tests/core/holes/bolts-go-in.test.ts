import { describe, expect, it } from 'vitest';
import { apply, rigid } from '../../../src/geometry/plane/rigid.ts';
import { add, distance, vec } from '../../../src/geometry/plane/vec.ts';
import { type BoltedPair, boltsGoIn } from '../../../src/holes/patterns/bolts-go-in.ts';
import { strewn } from '../../support/hole-patterns.ts';
import { Random } from '../../support/random.ts';

/** Clearance holes that lie about a true place somewhere, each off by a share of its play. */
function bolted(seed: number, share: number): BoltedPair[] {
  const random = new Random(seed);
  const motion = rigid(random.between(-1, 1), vec(random.between(-50, 50), random.between(-50, 50)));
  return strewn(random, random.whole(2, 14)).map((from) => {
    const allowedMm = random.between(0.2, 1.25);
    const way = random.between(0, 2 * Math.PI);
    const off = vec(share * allowedMm * Math.cos(way), share * allowedMm * Math.sin(way));
    return { from, to: add(apply(motion, from), off), allowedMm };
  });
}

const fullest = (bolts: readonly BoltedPair[], motion: ReturnType<typeof rigid>): number =>
  Math.max(...bolts.map(({ from, to, allowedMm }) => distance(apply(motion, from), to) / allowedMm));

describe('whether all bolts go in at once', () => {
  it('wherever a place exists for all of them, one is found', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const bolts = bolted(seed, 0.98);
      const found = boltsGoIn(bolts, false);
      expect({ seed, conclusion: found?.conclusion }).toEqual({ seed, conclusion: 'go-in' });
      expect(fullest(bolts, found?.motion ?? rigid(0, vec(0, 0)))).toBeLessThanOrEqual(1 + 1e-6);
    }
  });

  it('where it says that they cannot, no position near by lets them, tried at random', () => {
    const random = new Random(3);
    let cannot = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const bolts = bolted(seed, 2.5);
      const found = boltsGoIn(bolts, false);
      if (found?.conclusion !== 'cannot') continue;
      cannot += 1;
      for (let i = 0; i < 500; i++) {
        const { motion } = found;
        const shift = add(motion.shift, vec(random.between(-2, 2), random.between(-2, 2)));
        expect(fullest(bolts, rigid(motion.turnRad + random.between(-0.01, 0.01), shift))).toBeGreaterThan(1);
      }
    }
    expect(cannot).toBeGreaterThan(30);
  });

  // both holes off by their whole play toward one another: spacing is out by twice the play (computed)
  it.each([
    [0.99, 'go-in'],
    [1.01, 'cannot'],
  ])('two bolts whose spacing is out by %f of both their plays: %s', (share, conclusion) => {
    const bolts = [
      { from: vec(0, 0), to: vec(-0.5 * share, 0), allowedMm: 0.5 },
      { from: vec(100, 0), to: vec(100 + 0.25 * share, 0), allowedMm: 0.25 },
    ];
    expect(boltsGoIn(bolts, false)?.conclusion).toBe(conclusion);
  });

  it('a bolt as thick as its hole never goes in, and no bolts ask nothing', () => {
    expect(boltsGoIn([{ from: vec(0, 0), to: vec(0, 0), allowedMm: 0 }], false)).toMatchObject({
      conclusion: 'cannot',
      fullest: null,
    });
    expect(boltsGoIn([], false)).toBeNull();
  });

  it('about a common centre the part is turned and never shifted', () => {
    const found = boltsGoIn([{ from: vec(100, 0), to: vec(0, 100), allowedMm: 0.5 }], true);
    expect(found?.motion.shift).toEqual(vec(0, 0));
    expect(found).toMatchObject({ conclusion: 'go-in' });
    expect(boltsGoIn([{ from: vec(100, 0), to: vec(101, 0), allowedMm: 0.5 }], true)?.conclusion).toBe('cannot');
  });
});
