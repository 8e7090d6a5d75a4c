import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mirrorPoint } from '../../../src/geometry/plane/loop.ts';
import { apply } from '../../../src/geometry/plane/rigid.ts';
import { distance, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { checkHand, type Hand } from '../../../src/joint/hand.ts';
import { holeCentres, housingFlanges } from '../../../src/trade/flange-patterns.ts';
import { turned } from '../../support/shapes.ts';
import { titled } from '../../support/titled.ts';

interface Told<Expected> {
  readonly source: string;
  readonly expected: Expected;
  readonly tolerance: number;
  readonly why: string;
}

/** One bolt pattern and what is true of it, for any implementation to be held against; mm and degrees. */
interface BoltPatternCases {
  readonly pattern: Told<readonly (readonly [number, number])[]> & { readonly flange: string };
  /** The pattern laid over itself, mirrored (x → −x) and turned about its centre: how far its nearest holes are from each. */
  readonly laidOver: readonly (Told<{ readonly nearestMm: readonly number[] }> & {
    readonly title: string;
    readonly turn: number;
    readonly mirrored: boolean;
  })[];
  /** Some of its holes, counted from 1, paired with themselves. */
  readonly hands: readonly (Told<{ readonly hand: Hand; readonly asDrawnRmsMm?: number }> & {
    readonly title: string;
    readonly holes: readonly number[];
    readonly mirrored: boolean;
  })[];
}

const text = readFileSync(new URL('bolt-patterns.json', import.meta.url), 'utf8');
const { pattern, laidOver, hands } = JSON.parse(text) as BoltPatternCases;
const holes = pattern.expected.map(([x, y]) => vec(x, y));

describe('a pattern of twelve equally spaced holes', () => {
  test('is that of the flange', () => {
    const flange = housingFlanges.find(({ number }) => number === pattern.flange);
    const ours = flange === undefined ? [] : holeCentres(flange);
    expect(ours).toHaveLength(holes.length);
    for (const [i, hole] of ours.entries()) expect(distance(hole, holes[i] as Vec)).toBeLessThan(pattern.tolerance);
  });

  test.each(titled(laidOver))('%s', (_, { turn, mirrored, expected, tolerance }) => {
    for (const hole of mirrored ? holes.map(mirrorPoint) : holes) {
      const away = holes.map((other) => distance(apply(turned(turn), hole), other)).sort((a, b) => a - b);
      for (const [i, mm] of expected.nearestMm.entries())
        expect(Math.abs((away[i] as number) - mm)).toBeLessThan(tolerance);
    }
  });

  test.each(titled(hands))('%s', (_, { holes: counted, mirrored, expected, tolerance }) => {
    const some = counted.map((n) => holes[n - 1] as Vec);
    const { hand, asDrawnRmsMm } = checkHand(some.map((p) => ({ from: mirrored ? mirrorPoint(p) : p, to: p })));
    expect(hand).toBe(expected.hand);
    if (expected.asDrawnRmsMm !== undefined)
      expect(Math.abs((asDrawnRmsMm ?? Number.NaN) - expected.asDrawnRmsMm)).toBeLessThan(tolerance);
  });
});
