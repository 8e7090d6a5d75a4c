import { readFileSync } from 'node:fs';
import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import { passageOf } from '../../support/judge-passage.ts';
import { titled } from '../../support/titled.ts';

type Pair = readonly [number, number];

/**
 * A case that loses digits, for any implementation to run: mm and radians, every figure taken for exactly the decimal
 * that is written.
 */
interface Case {
  readonly title: string;
  readonly fixed: readonly LoopFile[];
  readonly moving: readonly LoopFile[];
  readonly start: { readonly turnRad: number; readonly shift: Pair };
  readonly motion: { readonly slide: Pair } | { readonly turnRad: number; readonly about: Pair };
  readonly source: string;
  readonly expected: {
    readonly state?: 'touches';
    /** Least distance to 50 digits: as text, since as a number it would be read as a double. */
    readonly distanceMm: string;
  };
  /** The answer keeps within the tolerance it gives itself, and gives itself no more than this; mm, and why. */
  readonly tolerance: number;
  readonly why: string;
}

const cases = JSON.parse(readFileSync(new URL('ill-conditioned.json', import.meta.url), 'utf8')) as readonly Case[];

describe('an ill-conditioned case is answered within the tolerance it gives', () => {
  test.each(titled(cases))('%s', (_, { fixed, moving, start, motion, expected, tolerance }) => {
    const answer = passageOf({
      fixed: fixed.map((loop) => loopOf(loop, 1)),
      moving: moving.map((loop) => loopOf(loop, 1)),
      start: rigid(start.turnRad, vec(...start.shift)),
      motion:
        'slide' in motion
          ? { kind: 'slide', by: vec(...motion.slide) }
          : { kind: 'turn', pole: vec(...motion.about), angleRad: motion.turnRad },
    });
    if (expected.state) expect(answer.state).toBe(expected.state);
    expect(answer.toleranceMm).toBeLessThanOrEqual(tolerance);
    const error = new Decimal(expected.distanceMm).minus(answer.distanceMm ?? Number.NaN).abs();
    expect(error.toNumber()).toBeLessThanOrEqual(answer.toleranceMm);
  });
});
