import { describe, expect, it } from 'vitest';
import { rigid } from '../../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { matchPatterns } from '../../../src/holes/patterns/match-patterns.ts';
import type { PatternHole } from '../../../src/holes/patterns/pattern.ts';
import { standardPatternsIn } from '../../../src/holes/patterns/standard-pattern.ts';
import { holeCentres, housingFlanges } from '../../../src/trade/flange-patterns.ts';
import { plainHole, shuffled, strewn, tracedAgain } from '../../support/hole-patterns.ts';
import { Random } from '../../support/random.ts';

const anywhere = { reachMm: 1.5, centred: false };
const centred = { reachMm: 1.5, centred: true };

const holes = (places: readonly Vec[], more: Partial<PatternHole> = {}): PatternHole[] =>
  places.map((at, i) => plainHole(`${i + 1}`, at, more));

const ring = (count: number, radiusMm: number, fromDeg = 0): Vec[] =>
  Array.from({ length: count }, (_, i) =>
    polar(vec(0, 0), radiusMm, (fromDeg * Math.PI) / 180 + (2 * Math.PI * i) / count),
  );

const flange = (number: string): Vec[] => {
  const found = housingFlanges.find((f) => f.number === number);
  return found === undefined ? [] : holeCentres(found).map(({ x, y }) => vec(x, y));
};

/** A flange as it was measured: anywhere on the sheet, each hole to ± 0.1 mm, with other holes about it. */
function measured(seed: number, places: readonly Vec[], strays = 0): PatternHole[] {
  const random = new Random(seed);
  const motion = rigid(random.between(-3, 3), vec(random.between(-300, 300), random.between(-300, 300)));
  const again = tracedAgain(random, places, { motion, mirrored: false, noiseMm: 0.1 });
  return shuffled(random, holes([...again, ...strewn(random, strays, again)]));
}

describe('symmetries that leave the holes without an answer are named', () => {
  it.each([
    ['twelve holes of SAE J617 No. 3', flange('3'), 12],
    ['eight of No. 5', flange('5'), 8],
    ['a square', ring(4, 80, 10), 4],
    ['a rectangle', [vec(-90, -50), vec(90, -50), vec(90, 50), vec(-90, 50)], 2],
    ['a triangle of unlike sides', [vec(0, 0), vec(100, 0), vec(20, 70)], 1],
    ['a ring of eight with a ninth hole beside it', [...ring(8, 100), vec(150, 20)], 1],
  ])('%s', (_, places, fold) => {
    for (const options of [anywhere, centred])
      for (let seed = 1; seed <= 5; seed++) {
        const random = new Random(seed);
        const motion = rigid(random.between(-3, 3), vec(0, 0));
        const again = tracedAgain(random, places, { motion, mirrored: false, noiseMm: 0.1 });
        const match = matchPatterns(holes(places), holes(again), options);
        expect({ seed, fold: match.fold, pairs: match.pairs.length }).toEqual({ seed, fold, pairs: places.length });
      }
  });

  it('a twelve-hole ring matches as well when turned by 30° either way, and of equals the least turned is told', () => {
    const match = matchPatterns(holes(flange('3')), holes(flange('3')), anywhere);
    expect(match.turnRad).toBeCloseTo(0, 9);
    const turnsDeg = match.others.map(({ turnRad }) => Math.round((turnRad * 180) / Math.PI));
    expect(turnsDeg.sort((a, b) => a - b)).toEqual([-150, -120, -90, -60, -30, 30, 60, 90, 120, 150, 180]);
    expect(match.others.every(({ asGood }) => asGood)).toBe(true);
    expect(match.otherHand.asGood).toBe(true);
  });

  it('a hole that stands alone settles the turn, and the others are told as nearly as good', () => {
    const places = [...ring(12, 200), vec(150, 60)];
    const match = matchPatterns(holes(places), holes(places), anywhere);
    expect(match).toMatchObject({ fold: 1, hand: 'as-drawn', conclusion: 'match' });
    expect(match.pairs).toHaveLength(13);
    expect(match.others.map(({ pairs, asGood }) => [pairs, asGood])).toEqual(Array(11).fill([12, false]));
  });

  it('a row of evenly spaced holes matches nearly as well one hole along', () => {
    const row = Array.from({ length: 12 }, (_, i) => vec(30 * i, 0));
    const match = matchPatterns(holes(row), holes(row), anywhere);
    expect(match.fold).toBe(2);
    expect(match.others.filter(({ asGood }) => !asGood).map(({ shift }) => Math.round(Math.abs(shift.x)))).toEqual(
      expect.arrayContaining([30, 30]),
    );
  });
});

describe('the hand', () => {
  const places = [vec(0, 0), vec(100, 0), vec(20, 70), vec(-60, 30), vec(-20, -80)];

  it('is told as mirrored where only that matches', () => {
    const seen = tracedAgain(new Random(1), places, { motion: rigid(1, vec(5, 9)), mirrored: true, noiseMm: 0.1 });
    const match = matchPatterns(holes(places), holes(seen), anywhere);
    expect(match).toMatchObject({ hand: 'mirrored', conclusion: 'match', otherHand: { asGood: false } });
    expect(match.turnRad).toBeCloseTo(1, 2);
  });
});

describe('too few holes', () => {
  it('two holes tell nothing that strewn ones would not', () => {
    const two = holes([vec(0, 0), vec(100, 0)]);
    expect(matchPatterns(two, two, anywhere)).toMatchObject({ conclusion: 'by-chance', pairs: [{}, {}] });
  });

  it('one hole matches nothing', () => {
    const one = holes([vec(3, 4)]);
    expect(matchPatterns(one, one, anywhere)).toMatchObject({ conclusion: 'none', pairs: [], rmsMm: null });
    expect(matchPatterns(holes([vec(0, 0)]), one, centred)).toMatchObject({ conclusion: 'none' });
  });

  it('holes that all lie on one spot make no position', () => {
    const heap = holes(Array(20).fill(vec(1, 1)));
    expect(matchPatterns(heap, heap, anywhere)).toMatchObject({ conclusion: 'none', trials: 0 });
  });
});

describe('a pattern of the trade is known by its holes', () => {
  it.each(housingFlanges.map(({ number }) => number))('SAE J617 No. %s, measured to ± 0.1 mm', (number) => {
    const [first] = standardPatternsIn(measured(7, flange(number)), 1.5);
    expect(first).toMatchObject({ standard: 'SAE J617', number });
    expect(first?.found).toHaveLength(flange(number).length);
    expect(first?.rmsMm ?? 1).toBeLessThan(0.12);
  });

  it('No. 3 among eight other holes, and with four of its twelve not measured', () => {
    expect(standardPatternsIn(measured(1, flange('3'), 8), 1.5)[0]).toMatchObject({ number: '3', holes: 12 });
    const some = standardPatternsIn(measured(2, flange('3').slice(2, 10), 2), 1.5);
    expect(some.map(({ number, found }) => [number, found.length])).toEqual([['3', 8]]);
  });

  it('one circle may be two standards: No. 5 of the housings is the 11-1/2 in flywheel', () => {
    const found = standardPatternsIn(measured(3, flange('5')), 1.5);
    expect(found.map(({ standard, number }) => `${standard} ${number}`)).toEqual(['SAE J617 5', 'SAE J620 11-1/2']);
    expect(found.map(({ source }) => source.basis)).toEqual(['looked up', 'from memory']);
  });

  it('its middle and turn are told in the frame of the part', () => {
    const turned = rigid(0.1, vec(0, 0));
    const places = flange('3').map(({ x, y }) =>
      vec(turned.cos * x - turned.sin * y + 40, turned.sin * x + turned.cos * y - 7),
    );
    const [first] = standardPatternsIn(holes(places), 1.5);
    expect(first?.centre.x).toBeCloseTo(40, 9);
    expect(first?.centre.y).toBeCloseTo(-7, 9);
    expect(first?.turnRad).toBeCloseTo(0.1, 9);
  });

  it('a circle of other size, and holes that are strewn, are none', () => {
    expect(standardPatternsIn(measured(4, ring(12, 200)), 1.5)).toEqual([]);
    expect(standardPatternsIn(holes(strewn(new Random(5), 40)), 1.5)).toEqual([]);
  });
});

describe('the search is bounded', () => {
  it('two grids of 400 holes, alike in every spacing, end with a count of what was tried', () => {
    const grid = Array.from({ length: 400 }, (_, i) => vec(20 * (i % 20), 20 * Math.floor(i / 20)));
    const match = matchPatterns(holes(grid), holes(grid), anywhere);
    expect(match.trials).toBeLessThanOrEqual(2 * 50_000);
    expect(match).toMatchObject({ allTried: false, conclusion: 'match' });
    expect(match.pairs).toHaveLength(400);
  });
});
