import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Motion, motionAt, partOfMotion } from '../../src/geometry/motion/motion.ts';
import type { Passage } from '../../src/geometry/motion/passage.ts';
import { moveRegion } from '../../src/geometry/plane/loop.ts';
import { apply, compose, inverse, type Rigid, rigid, rotate } from '../../src/geometry/plane/rigid.ts';
import { scale, vec } from '../../src/geometry/plane/vec.ts';
import { passageOf, witnessFaults } from '../support/judge-passage.ts';
import { solidOf } from '../support/oracles/solid.ts';
import { Random } from '../support/random.ts';
import { randomSetting, type Setting } from '../support/random-settings.ts';

/** Settings are made from a seed: what shrinks is the seed, what is printed is enough to make the case again. */
const settings = fc.integer({ min: 1, max: 2 ** 31 - 1 }).map((seed) => randomSetting(new Random(seed)));
const runs = { numRuns: 150, seed: 20_240 };

/** Two ways to the same distance differ by rounding only, which grows with the pole's distance. */
const slackMm = ({ motion }: Setting): number =>
  1e-9 + (motion.kind === 'turn' ? 1e-14 * Math.hypot(motion.pole.x, motion.pole.y) : 0);

function expectSame(a: Passage, b: Passage, slack: number): void {
  expect(b.state).toBe(a.state);
  expect(Math.abs((b.distanceMm ?? -1) - (a.distanceMm ?? -1))).toBeLessThanOrEqual(slack);
}

const carried = (motion: Motion, by: Rigid): Motion =>
  motion.kind === 'slide' ? { kind: 'slide', by: rotate(by, motion.by) } : { ...motion, pole: apply(by, motion.pole) };

const backward = (motion: Motion): Motion =>
  motion.kind === 'slide' ? { kind: 'slide', by: scale(motion.by, -1) } : { ...motion, angleRad: -motion.angleRad };

describe('the passage of two solids', () => {
  test('is the same whichever of the two is said to move', () => {
    fc.assert(
      fc.property(settings, (setting) => {
        // seen from the moving solid's own frame the fixed one makes the motion backward
        const away = inverse(setting.start);
        const swapped: Setting = {
          fixed: setting.moving,
          moving: setting.fixed,
          start: away,
          motion: carried(backward(setting.motion), away),
        };
        expectSame(passageOf(setting), passageOf(swapped), slackMm(setting));
      }),
      runs,
    );
  });

  test('is the same wherever the two stand together', () => {
    const places = fc.record({
      turn: fc.double({ min: -7, max: 7, noNaN: true }),
      x: fc.integer({ min: -300, max: 300 }),
      y: fc.integer({ min: -300, max: 300 }),
    });
    fc.assert(
      fc.property(settings, places, (setting, place) => {
        const by = rigid(place.turn, vec(place.x, place.y));
        const moved: Setting = {
          ...setting,
          fixed: moveRegion(setting.fixed, by),
          start: compose(by, setting.start),
          motion: carried(setting.motion, by),
        };
        expectSame(passageOf(setting), passageOf(moved), 3 * slackMm(setting));
      }),
      runs,
    );
  });

  test('is the same run backward', () => {
    fc.assert(
      fc.property(settings, (setting) => {
        const start = compose(motionAt(setting.motion, 1), setting.start);
        const there = passageOf(setting);
        const back = passageOf({ ...setting, start, motion: backward(setting.motion) });
        expectSame(there, back, slackMm(setting));
        expect(back.overlaps).toHaveLength(there.overlaps.length);
        for (const [i, { from, to }] of there.overlaps.entries()) {
          const mirrored = back.overlaps[back.overlaps.length - 1 - i];
          expect(Math.abs((mirrored?.to ?? -1) - (1 - from))).toBeLessThan(1e-6);
          expect(Math.abs((mirrored?.from ?? -1) - (1 - to))).toBeLessThan(1e-6);
        }
      }),
      runs,
    );
  });

  test('parted in two has the least of both', () => {
    fc.assert(
      fc.property(settings, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (setting, cut) => {
        const whole = passageOf(setting);
        const parts = [
          [0, cut],
          [cut, 1],
        ].map(([from = 0, to = 1]) =>
          passageOf({ ...setting, ...partOfMotion(setting.start, setting.motion, from, to) }),
        );
        const least = Math.min(...parts.map((part) => part.distanceMm ?? -1));
        expect(Math.abs(least - (whole.distanceMm ?? -1))).toBeLessThanOrEqual(slackMm(setting));
        expect(parts.some((part) => part.state === 'fouls')).toBe(whole.state === 'fouls');
      }),
      runs,
    );
  });

  test('is witnessed by points on both outlines, as far apart at that instant as told', () => {
    fc.assert(
      fc.property(settings, (setting) => {
        expect(witnessFaults(setting, passageOf(setting), solidOf(setting.fixed), solidOf(setting.moving))).toEqual([]);
      }),
      runs,
    );
  });

  test('of a solid with nothing is clear, at no distance and no place', () => {
    fc.assert(
      fc.property(settings, (setting) => {
        const none = { state: 'clear', distanceMm: null, nearest: null, overlaps: [] };
        expect(passageOf({ ...setting, fixed: [] })).toMatchObject(none);
        expect(passageOf({ ...setting, moving: [] })).toMatchObject(none);
      }),
      { numRuns: 20, seed: runs.seed },
    );
  });
});
