import { describe, expect, it } from 'vitest';
import type { Motion as KernelMotion } from '../../../src/geometry/motion/motion.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import {
  type Motion,
  type Outline,
  OutlineError,
  type OutlineFault,
  passage,
  relief,
  slide,
  solid,
  sweptRegion,
  turn,
} from '../../../src/motion-library.ts';
import { Random } from '../../support/random.ts';
import { randomSetting } from '../../support/random-settings.ts';

const square = solid([
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]);
const round = solid({ circle: [30, 5], radius: 5 });
const about: readonly [number, number] = [0, 0];

/** What is wrong with outlines. */
function faultsOf(...outlines: readonly unknown[]): readonly Partial<OutlineFault>[] {
  try {
    solid(...(outlines as Outline[]));
    return [];
  } catch (error) {
    if (error instanceof OutlineError) return error.faults;
    throw error;
  }
}

describe('a solid', () => {
  it.each<[string, readonly unknown[], Partial<OutlineFault>]>([
    ['no outline', [], { kind: 'no-outline' }],
    ['no vertices', [[]], { kind: 'too-few-vertices' }],
    [
      'a coordinate that is no number',
      [
        [
          [0, 0],
          [10, Number.NaN],
          [0, 10],
        ],
      ],
      { kind: 'malformed', vertex: 1 },
    ],
    ['a coordinate left out', [[[0, 0], [10], [0, 10]]], { kind: 'malformed', vertex: 1 }],
    ['a point as an object', [[{ x: 0, y: 0 }, [10, 0], [0, 10]]], { kind: 'malformed', vertex: 0 }],
    ['a radius of nothing', [{ circle: [0, 0], radius: 0 }], { kind: 'malformed', vertex: null }],
    ['nothing for an outline', [null], { kind: 'malformed' }],
    [
      'a vertex far off',
      [
        [
          [0, 0],
          [2e5, 0],
          [0, 10],
        ],
      ],
      { kind: 'too-far' },
    ],
    [
      'an arc that swings far off',
      [
        [
          [0, 0],
          [9e4, 0, 1e5],
          [9e4, 10],
        ],
      ],
      { kind: 'too-far' },
    ],
    [
      'a bow tie',
      [
        [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ],
      ],
      { kind: 'crosses', at: [5, 5] },
    ],
    [
      'the first vertex again',
      [
        [
          [0, 0],
          [10, 0],
          [0, 10],
          [0, 0],
        ],
      ],
      { kind: 'closed-twice', vertex: 3 },
    ],
    [
      'two discs that meet',
      [
        { circle: [0, 0], radius: 5 },
        { circle: [8, 0], radius: 5 },
      ],
      { kind: 'crosses', outline: 1, otherOutline: 0 },
    ],
  ])('is refused for %s, as data', (_, outlines, fault) => {
    expect(faultsOf(...outlines)[0]).toMatchObject(fault);
  });

  it('says in words what is wrong first', () => {
    expect(() =>
      solid([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ).toThrow('outline 0 crosses itself at [5, 5]');
  });

  it('stays what it was made as, whatever becomes of the lists it was made from', () => {
    const corners: [number, number][] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const made = solid(corners);
    corners[1] = [1e4, 0];
    expect(passage(made, round, slide([0, 0])).distanceMm).toBe(15);
  });

  it('that was made elsewhere is turned away', () => {
    expect(() => passage({ areaMm2: 4 }, round, slide([0, 0]))).toThrow(TypeError);
  });
});

describe('motions', () => {
  it.each([
    ['a slide that is no number', () => slide([Number.NaN, 0])],
    ['a slide out of all measure', () => slide([1e6, 0])],
    ['more than a hundred turns, as degrees soon are', () => turn(3600, about)],
    ['a turn about a point out of all measure', () => turn(1, [1e8, 0])],
    ['a start that is no number', () => passage(square, round, slide([1, 0]), { turnRad: Number.NaN })],
    ['a motion written by hand', () => passage(square, round, { kind: 'turn', turnRad: 1 } as unknown as Motion)],
    ['a clearance below nothing', () => relief(square, round, slide([1, 0]), -1)],
    ['a tolerance below the grid', () => sweptRegion(round, slide([1, 0]), { toleranceMm: 1e-9 })],
    ['a region carried out of all measure', () => sweptRegion(round, turn(1, [1e7, 0]))],
  ])('%s is a RangeError', (_, ask) => {
    expect(ask).toThrow(RangeError);
  });

  it('an arc that is all but straight, its centre far off, is carried like any other', () => {
    const bowed = solid([
      [0, 0],
      [1000, 0, 1e-5],
      [1000, 10],
      [0, 10],
    ]);
    // the arc's own height over its chord, 10 × 1e-5 ÷ 2, is below what is written out
    expect(sweptRegion(bowed, slide([0, 20])).areaMm2).toBeCloseTo(30_000, 0);
  });

  it('a start turns about the origin and then shifts', () => {
    // a disc at (30, 5), turned a quarter, stands at (-5, 30)
    const start = { turnRad: Math.PI / 2, shift: [10, 0] } as const;
    expect(passage(square, round, slide([0, 0]), start).distanceMm).toBeCloseTo(15, 12);
    expect(sweptRegion(round, slide([0, 0]), { start }).areaMm2).toBeCloseTo(25 * Math.PI, 2);
  });
});

describe('a passage', () => {
  it('that only touches says where, and one that fouls says when', () => {
    const touch = passage(square, round, slide([-20, 0]), { shift: [5, 0] });
    expect(touch).toMatchObject({ state: 'touches', distanceMm: 0, nearest: { at: 1 }, overlaps: [] });
    expect(touch.nearest.fixedAt[1]).toBeCloseTo(5, 12);
    const [overlap] = passage(square, round, slide([-60, 0])).overlaps;
    // from 15 mm, where it comes to the square, to 35 mm, where it leaves
    expect(overlap?.from).toBeCloseTo(15 / 60, 9);
    expect(overlap?.to).toBeCloseTo(35 / 60, 9);
  });
});

describe('a relief', () => {
  it('of a ring for a roller that goes all round is a ring, in closed form', () => {
    const ring = solid({ circle: about, radius: 215 }, { circle: about, radius: 150 });
    const roller = solid({ circle: [220, 0], radius: 12 });
    const { cut, left } = relief(ring, roller, turn(2 * Math.PI, about), 2, { toleranceMm: 1e-3 });
    // all beyond 220 − 12 − 2 has to go
    expect(Math.abs(cut.areaMm2 - Math.PI * (215 ** 2 - 206 ** 2))).toBeLessThan(cut.boundMm * 2 * Math.PI * 421);
    expect(Math.abs(left.areaMm2 - Math.PI * (206 ** 2 - 150 ** 2))).toBeLessThan(left.boundMm * 2 * Math.PI * 356);
  });

  it('of what is clear already is nothing, and of what is gone through leaves nothing', () => {
    expect(relief(square, round, slide([0, 0]), 2).cut).toMatchObject({ outlines: [], areaMm2: 0 });
    expect(relief(round, square, slide([60, 0]), 2).left).toMatchObject({ outlines: [], areaMm2: 0 });
  });

  it('leaves what keeps the clearance asked, at random', () => {
    const random = new Random(41);
    for (let i = 0; i < 30; i++) {
      const { fixed, moving, start, motion } = randomSetting(random);
      if (motion.kind === 'turn' && Math.hypot(motion.pole.x, motion.pole.y) > 1e5) continue;
      const clearanceMm = random.pick([0, 0.5, 3]);
      const [ours, theirs] = [solid(...outlinesOf(fixed)), solid(...outlinesOf(moving))];
      const way = wayOf(motion);
      const options = { start: { turnRad: start.turnRad, shift: [start.shift.x, start.shift.y] as const } };
      const { cut, left } = relief(ours, theirs, way, clearanceMm, options);
      expect(cut.areaMm2 + left.areaMm2, `case ${i}`).toBeGreaterThan(ours.areaMm2 - 1e-3);
      if (left.outlines.length === 0) continue;
      const passed = passage(solid(...left.outlines), theirs, way, options.start);
      expect(passed.distanceMm, `case ${i}`).toBeGreaterThanOrEqual(clearanceMm);
    }
  });
});

const outlinesOf = (region: Region): Outline[] =>
  region.map((loop) =>
    loop.kind === 'circle'
      ? { circle: [loop.centre.x, loop.centre.y], radius: loop.radius }
      : loop.vertices.map(({ x, y, bulge }) => [x, y, bulge] as const),
  );

const wayOf = (motion: KernelMotion): Motion =>
  motion.kind === 'slide' ? slide([motion.by.x, motion.by.y]) : turn(motion.angleRad, [motion.pole.x, motion.pole.y]);
