import { describe, expect, test } from 'vitest';
import { mirrorPoint } from '../../../src/geometry/plane/loop.ts';
import { apply, rigid } from '../../../src/geometry/plane/rigid.ts';
import { distance, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { checkHand } from '../../../src/joint/hand.ts';
import { holeCentres, housingFlanges } from '../../../src/trade/flange-patterns.ts';

// Source: SAE J617 No. 3, hole centres computed from bolt circle and count; closed forms from equal spacing.
const number3 = housingFlanges.find((f) => f.number === '3');
if (number3 === undefined) throw new Error('no flange No. 3');
const holes: readonly Vec[] = holeCentres(number3);
const pitchRadius = number3.boltCircleMm / 2;
// coordinates of some 200 mm through one rotation
const rounding = 1e-10;

/** How far the farthest hole of one pattern is from the other pattern, whatever the holes are called. */
const unlabelledMiss = (some: readonly Vec[], others: readonly Vec[]) =>
  Math.max(...some.map((p) => Math.min(...others.map((q) => distance(p, q)))));

describe('a pattern of twelve equally spaced holes', () => {
  test('turned 30° lies on itself, turned 15° sits midway: each hole 55.95 mm from its two neighbours', () => {
    const turned = (deg: number) => holes.map((p) => apply(rigid((deg * Math.PI) / 180, vec(0, 0)), p));
    expect(unlabelledMiss(turned(30), holes)).toBeLessThan(rounding);
    // chord of 15°
    const midway = 2 * pitchRadius * Math.sin((7.5 * Math.PI) / 180);
    for (const p of turned(15)) {
      const [nearest, second] = holes.map((q) => distance(p, q)).sort((a, b) => a - b);
      expect(nearest).toBeCloseTo(midway, 9);
      expect(second).toBeCloseTo(midway, 9);
    }
    expect(midway).toBeCloseTo(55.95, 2);
  });

  test('unlabelled equals its own mirror image', () => {
    expect(unlabelledMiss(holes.map(mirrorPoint), holes)).toBeLessThan(rounding);
  });

  test('labelled does not: its mirror image fits by no turn, and the hand is found', () => {
    expect(checkHand(holes.map((p) => ({ from: p, to: p }))).hand).toBe('agrees');
    const { hand, asDrawnRmsMm } = checkHand(holes.map((p) => ({ from: mirrorPoint(p), to: p })));
    expect(hand).toBe('mirrored');
    // as large as a pattern's own spread allows: √2 × the pitch radius
    expect(asDrawnRmsMm).toBeCloseTo(Math.SQRT2 * pitchRadius, 9);
  });

  test('seen through two of its holes only, as through two dowels, cannot tell its hand', () => {
    const two = [holes[0] as Vec, holes[5] as Vec];
    expect(checkHand(two.map((p) => ({ from: mirrorPoint(p), to: p }))).hand).toBe('cannot-tell');
    expect(checkHand(two.map((p) => ({ from: p, to: p }))).hand).toBe('cannot-tell');
  });
});
