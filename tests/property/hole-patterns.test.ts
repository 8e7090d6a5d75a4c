import { describe, expect, it } from 'vitest';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import { matchPatterns } from '../../src/holes/patterns/match-patterns.ts';
import { plainHole, shuffled, strewn, tracedAgain } from '../support/hole-patterns.ts';
import { Random } from '../support/random.ts';

const noiseMm = 0.1;
const reachMm = 1.5;

/** A pattern traced twice, with holes that only one tracer has; a true hole has one name on both sheets. */
function tracedTwice(seed: number, { trueHoles, strays }: { trueHoles: number; strays: number }, centred: boolean) {
  const random = new Random(seed);
  const places = strewn(random, trueHoles);
  const shift = centred ? vec(0, 0) : vec(random.between(-300, 300), random.between(-300, 300));
  const motion = rigid(random.between(-Math.PI, Math.PI), shift);
  const mirrored = random.chance(0.5);
  const again = tracedAgain(random, places, { motion, mirrored, noiseMm });
  const fixed = [
    ...places.map((at, i) => plainHole(`true ${i}`, at)),
    ...strewn(random, strays, places).map((at, i) => plainHole(`stray ${i}`, at)),
  ];
  const moving = [
    ...again.map((at, i) => plainHole(`true ${i}`, at)),
    ...tracedAgain(random, strewn(random, strays, places), { motion, mirrored, noiseMm }).map((at, i) =>
      plainHole(`other stray ${i}`, at),
    ),
  ];
  return { fixed: shuffled(random, fixed), moving: shuffled(random, moving), motion, mirrored };
}

describe.each([
  ['anywhere', false],
  ['about one centre', true],
])('two unlabelled patterns %s, traced to ± 0.1 mm', (_, centred) => {
  it.each([
    [16, 0],
    [11, 5],
    [6, 2],
    [28, 12],
    [70, 30],
  ])('of %d holes and %d strays each are paired hole by hole, with their turn and hand', (trueHoles, strays) => {
    const cases = trueHoles > 20 ? 3 : 60;
    for (let seed = 1; seed <= cases; seed++) {
      const { fixed, moving, motion, mirrored } = tracedTwice(seed, { trueHoles, strays }, centred);
      const match = matchPatterns(fixed, moving, { reachMm, centred });
      expect({ seed, conclusion: match.conclusion, hand: match.hand, allTried: match.allTried }).toEqual({
        seed,
        conclusion: 'match',
        hand: mirrored ? 'mirrored' : 'as-drawn',
        allTried: true,
      });
      const paired = new Map(match.pairs.map((pair) => [pair.fixed.id, pair.moving.id]));
      for (let i = 0; i < trueHoles; i++) expect(paired.get(`true ${i}`)).toBe(`true ${i}`);
      // the turn is known to the noise over the size of the pattern
      expect(Math.abs(Math.sin((match.turnRad - motion.turnRad) / 2))).toBeLessThan(1e-3);
      expect(match.rmsMm ?? 9).toBeLessThan(2 * noiseMm + 0.2 * strays * noiseMm);
      expect(match.otherHand.asGood).toBe(false);
      expect(match.fold).toBe(1);
    }
  });

  it('patterns that have nothing to do with one another are told to match in fewer than one case in twenty', () => {
    let matches = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const random = new Random(seed);
      const [fixed, moving] = [16, 16].map((count) => strewn(random, count).map((at, i) => plainHole(`${i}`, at)));
      if (matchPatterns(fixed ?? [], moving ?? [], { reachMm, centred }).conclusion === 'match') matches += 1;
    }
    expect(matches).toBeLessThan(10);
  });
});
