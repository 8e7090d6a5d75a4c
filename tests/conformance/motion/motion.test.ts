import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { LoopFile } from '../../../src/files/part-file.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { apply, rotationAbout } from '../../../src/geometry/plane/rigid.ts';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { radians, slideBy, turnBy, turned } from '../../support/shapes.ts';
import { titled } from '../../support/titled.ts';

type Pair = readonly [number, number];

/** A case that any implementation could run: loops as a part file has them, mm and degrees. */
interface Case {
  readonly group: string;
  readonly title: string;
  readonly fixed: readonly LoopFile[];
  readonly moving: readonly LoopFile[];
  readonly start: { readonly turn: number; readonly shift: Pair };
  readonly motion: { readonly slide: Pair } | { readonly turn: number; readonly about: Pair };
  readonly source: string;
  readonly expected: {
    readonly state: 'clear' | 'touches' | 'fouls';
    /** Least distance, mm. */
    readonly distanceMm: number;
    /** When it is nearest, or first touches, as a fraction of the motion; left out where more than one instant will do. */
    readonly at?: number;
    /** When it overlaps. */
    readonly overlaps?: readonly Pair[];
  };
  /** Of distance (mm) and of fractions alike, and why. */
  readonly tolerance: number;
  readonly why: string;
}

const cases = JSON.parse(readFileSync(new URL('cases.json', import.meta.url), 'utf8')) as readonly Case[];
const groups = [...new Set(cases.map(({ group }) => group))];

const regionOf = (loops: readonly LoopFile[]): Region => loops.map((loop) => loopOf(loop, 1));

function holds({ fixed, moving, start, motion, expected, tolerance }: Case): void {
  const answer = passageOf({
    fixed: regionOf(fixed),
    moving: regionOf(moving),
    start: turned(start.turn, ...start.shift),
    motion: 'slide' in motion ? slideBy(...motion.slide) : turnBy(motion.turn, ...motion.about),
  });
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

for (const name of groups) {
  describe(name, () => {
    test.each(titled(cases.filter(({ group }) => group === name)))('%s', (_, one) => holds(one));
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
