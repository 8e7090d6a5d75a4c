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

/** A point turned about a pole; mm and degrees. */
interface Rotation {
  readonly title: string;
  readonly point: Pair;
  readonly turn: number;
  readonly about: Pair;
  readonly source: string;
  readonly expected: { readonly at: Pair; readonly chordMm: number };
  readonly tolerance: number;
  readonly why: string;
}

describe('a rotation', () => {
  const rotations = JSON.parse(readFileSync(new URL('rotations.json', import.meta.url), 'utf8')) as readonly Rotation[];
  test.each(titled(rotations))('%s', (_, { point, turn, about, expected, tolerance }) => {
    const p = apply(rotationAbout(vec(...about), radians(turn)), vec(...point));
    expect(Math.abs(p.x - expected.at[0])).toBeLessThan(tolerance);
    expect(Math.abs(p.y - expected.at[1])).toBeLessThan(tolerance);
    expect(Math.abs(distance(p, vec(...point)) - expected.chordMm)).toBeLessThan(tolerance);
  });
});
