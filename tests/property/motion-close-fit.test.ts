import { describe, expect, test } from 'vitest';
import type { Region } from '../../src/geometry/plane/loop.ts';
import { identity, rigid } from '../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../src/geometry/plane/vec.ts';
import { passageOf } from '../support/judge-passage.ts';
import { Random } from '../support/random.ts';
import { disc, path, slideBy, standing, wallRound } from '../support/shapes.ts';

// Source: closed form. A disc of radius r, its centre e from that of a bore of radius R, is R − r − e clear of the wall.
const fits = Array.from({ length: 300 }, (_, seed) => {
  const random = new Random(seed + 1);
  const bore = random.magnitude(2, 250);
  const playMm = random.pick([0, random.magnitude(1e-4, 1)]);
  return { bore, playMm, toward: random.between(-4, 4), turned: random.between(-4, 4), halves: random.chance(0.5) };
});

/** A disc as one circle or as two half circles, which have corners where they meet. */
const pin = (radius: number, halves: boolean): Region =>
  halves ? [path([-radius, 0, 1], [radius, 0, 1])] : disc(0, 0, radius);

describe('a pin in a bore of nearly its own size', () => {
  test.each([1e-2, 1e-3, 1e-4])('pressed %f mm into the wall fouls', (deepMm) => {
    const wrong = fits.filter(({ bore, playMm, toward, turned, halves }) => {
      const start = rigid(turned, polar(vec(0, 0), playMm + deepMm, toward));
      return (
        passageOf({
          fixed: wallRound(0, 0, bore, 2 * bore),
          moving: pin(bore - playMm, halves),
          start,
          motion: standing,
        }).state !== 'fouls'
      );
    });
    expect(wrong).toEqual([]);
  });

  test.each([1e-2, 1e-3, 1e-4])('slid until it is %f mm in the wall fouls', (deepMm) => {
    const wrong = fits.filter(({ bore, playMm, toward, halves }) => {
      const by = polar(vec(0, 0), playMm + deepMm, toward);
      const motion = slideBy(by.x, by.y);
      return (
        passageOf({
          fixed: wallRound(0, 0, bore, 2 * bore),
          moving: pin(bore - playMm, halves),
          start: identity,
          motion,
        }).state !== 'fouls'
      );
    });
    expect(wrong).toEqual([]);
  });

  test.each([1e-2, 1e-3, 1e-4])('%f mm short of the wall is that clear', (gapMm) => {
    for (const { bore, playMm, toward, turned, halves } of fits.filter((fit) => fit.playMm > 2 * gapMm)) {
      const start = rigid(turned, polar(vec(0, 0), playMm - gapMm, toward));
      const answer = passageOf({
        fixed: wallRound(0, 0, bore, 2 * bore),
        moving: pin(bore - playMm, halves),
        start,
        motion: standing,
      });
      expect(answer.state).toBe('clear');
      // coordinates to 500 mm
      expect(Math.abs((answer.distanceMm ?? 0) - gapMm)).toBeLessThan(1e-11);
    }
  });
});
