import { describe, expect, test } from 'vitest';
import { apply, rotationAbout } from '../../../src/geometry/plane/rigid.ts';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { radians } from '../../support/shapes.ts';
import type { MotionCase } from './motion-case.ts';
import { poleCases, slideCases } from './pole-cases.ts';
import { staticCases, touchOrFoulCases } from './static-cases.ts';
import { turnCases } from './turn-cases.ts';

function holds({ expected, tolerance, ...setting }: MotionCase): void {
  const answer = passageOf(setting);
  expect(answer.state).toBe(expected.state);
  expect(Math.abs((answer.distanceMm ?? Number.NaN) - expected.distanceMm)).toBeLessThanOrEqual(tolerance);
  expect(answer.toleranceMm).toBeLessThanOrEqual(1e-3);
  if (expected.at !== undefined)
    expect(Math.abs((answer.nearest?.at ?? Number.NaN) - expected.at)).toBeLessThanOrEqual(1e-7);
  if (!expected.overlaps) return;
  expect(answer.overlaps).toHaveLength(expected.overlaps.length);
  for (const [i, [from, to]] of expected.overlaps.entries()) {
    expect(Math.abs((answer.overlaps[i]?.from ?? Number.NaN) - from)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs((answer.overlaps[i]?.to ?? Number.NaN) - to)).toBeLessThanOrEqual(tolerance);
  }
}

const groups: readonly (readonly [string, readonly MotionCase[]])[] = [
  ['a turn', turnCases],
  ['a pole', poleCases],
  ['a slide', slideCases],
  ['standing still', staticCases],
  ['touching or fouling', touchOrFoulCases],
];

for (const [name, cases] of groups) {
  describe(name, () => {
    test.each(cases)('$title', holds);
  });
}

describe('a rotation', () => {
  // Source: computed, 200·sin and 200·cos of 15°; chord 2·200·sin 7.5°. Tolerance: three decimals are given.
  test.each([15, -15])('takes (0, 200) turned %i° to (∓51.764, 193.185), a chord of 52.210', (deg) => {
    const p = apply(rotationAbout(vec(0, 0), radians(deg)), vec(0, 200));
    expect(p.x).toBeCloseTo(-Math.sign(deg) * 51.764, 3);
    expect(p.y).toBeCloseTo(193.185, 3);
    expect(distance(p, vec(0, 200))).toBeCloseTo(52.21, 3);
  });
});
