import { describe, expect, it } from 'vitest';
import type { GrindAnswer } from '../../../src/answers/grind-answer.ts';
import { box, castingOf, disc, type JobSpec, outline } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';
import { Random } from '../../support/random.ts';
import { randomFit } from '../../support/random-fit.ts';

const plan = (spec: JobSpec): GrindAnswer => answerTo(jointOf(spec));

/** A bar 12 thick with something 1 clear of going 2 deep into its upper side: 12 − 3 is left as planned. */
const bar: JobSpec = {
  clearance: 1,
  minWallMm: 4,
  fixed: castingOf({
    sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, 0, 120, 12)], traceErrorMm: 0.3 }],
  }),
  moving: castingOf({ sections: [{ id: 'toe', depth: [-20, 0], loops: [disc(60, 40, 30)], traceErrorMm: 0.4 }] }),
};

describe('metal across from a cut', () => {
  it('is measured to the outline on the far side, every error taken off', () => {
    const [thin] = plan(bar).thin;
    expect(plan(bar).thin).toHaveLength(1);
    // the toe reaches down to y 10, the cut to 9; the last line 0.4 lower; 0.3 of the bar's own and 0.5 of the hand
    expect(thin?.nominalMm).toBeCloseTo(9, 2);
    expect(thin?.wallMm).toBeCloseTo(8.6 - 0.3 - 0.5, 2);
    expect(thin?.at[0]).toBeCloseTo(60, 0);
    expect(thin?.across[1]).toBeCloseTo(0, 6);
    expect(thin?.holds).toBe(true);
  });

  it('that is less than the least wall stands against the plan', () => {
    const answer = plan({ ...bar, minWallMm: 8 });
    expect(answer.thin).toMatchObject([{ keepMm: 8, holds: false }]);
    expect(answer.holds).toBe(false);
  });

  it('goes round a hole as well as to the far side', () => {
    const holed = castingOf({
      sections: [
        { id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, 0, 120, 12), disc(60, 3, 2)], traceErrorMm: 0.3 },
      ],
    });
    // the hole's top is at y 5
    expect(plan({ ...bar, fixed: holed }).thin[0]?.nominalMm).toBeCloseTo(4, 2);
  });

  it('is not the flank a cut runs out on', () => {
    // a bar ten times as thick: what is near the ends of the cut is its own side, and nothing lies across in reach
    const block = castingOf({
      sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, -108, 120, 12)], traceErrorMm: 0.3 }],
    });
    expect(plan({ ...bar, fixed: block }).thin).toEqual([]);
  });

  it('of a sharp feather left between a cut and a slant is thin', () => {
    // a wedge of 20° with the cut through its thin end
    const wedge = castingOf({
      sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [outline([0, 12], [120, 12], [120, -31.7])] }],
    });
    expect(plan({ ...bar, fixed: wedge, minWallMm: 30 }).thin[0]?.holds).toBe(false);
  });

  it('is not what rounding leaves beside a cut that runs along an outline', () => {
    // in these no other edge is in reach across the metal, but cuts share long stretches with the outline
    for (const seed of [8, 15, 33]) {
      const { fit, ...joint } = randomFit(new Random(seed));
      const { thin } = answerTo({ ...joint, fit: { ...fit, minWallMm: 4 } });
      expect(
        thin.filter(({ along }) => along === 'plane'),
        `seed ${seed}`,
      ).toEqual([]);
    }
  });

  it('is not spoken of where no least wall is set', () => {
    expect(plan({ ...bar, minWallMm: null }).thin).toEqual([]);
  });
});

describe('walls that were read', () => {
  const withReading = (reading: {
    at: [number, number];
    depthMm: number;
    wallMm: number;
    errorMm: number;
  }): JobSpec => ({
    ...bar,
    minWallMm: null,
    fixed: castingOf({
      sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, 0, 120, 12)], traceErrorMm: 0.3 }],
      wallReadings: [reading],
    }),
  });

  it('lose what the last line takes off beside them, and both errors', () => {
    const answer = plan(withReading({ at: [62, 12], depthMm: 10, wallMm: 8, errorMm: 0.6 }));
    expect(answer.readings).toHaveLength(1);
    // the last line is an arc of 31.4 about (60, 40): 3.4 deep at its deepest, 2 mm from where the wall was read
    const hereMm = 12 - (40 - Math.sqrt(31.4 ** 2 - 4));
    expect(answer.readings[0]?.takeOffMm).toBeCloseTo(hereMm, 2);
    expect(answer.readings[0]?.wallMm).toBeCloseTo(8 - hereMm - 0.6 - 0.5, 2);
    expect(answer.readings[0]?.mostTakeOffMm).toBeCloseTo(3.4, 2);
    expect(answer.readings[0]?.leastWallMm).toBeCloseTo(8 - 3.4 - 0.6 - 0.5, 2);
    expect(answer.readings[0]?.holds).toBeNull();
  });

  it('speak for places within 10 mm, or their own thickness; farther away the deepest place is to be measured first', () => {
    const reading = { at: [62, 12] as [number, number], depthMm: 10, errorMm: 0.6 };
    const [first] = plan(withReading({ ...reading, wallMm: 8 })).unmeasured;
    // by Pythagoras the middle of the cut, 2 aside, is out of reach at either end of its depth
    expect(Math.hypot((first?.at[0] ?? 0) - 62, (first?.atDepthMm ?? 0) - 10)).toBeGreaterThan(10);
    expect(first?.at[0]).toBeCloseTo(60, 0);
    expect(plan(withReading({ ...reading, wallMm: 24 })).unmeasured).toEqual([]);
  });

  it('are charged with what comes off at their place, not with the deepest of the cut', () => {
    // 40 deep-going toe beside a step of half a millimetre where the wall was read
    const fixed = castingOf({
      sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, 0, 120, 12)], traceErrorMm: 0 }],
      wallReadings: [{ at: [100, 12], depthMm: 10, wallMm: 6, errorMm: 0.5 }],
    });
    const moving = castingOf({
      sections: [
        {
          id: 'toe',
          depth: [-20, 0],
          loops: [outline([20, 10], [60, 10], [60, 12.5], [120, 12.5], [120, 30], [20, 30])],
          traceErrorMm: 0,
        },
      ],
    });
    const [read] = plan({ ...bar, fixed, moving }).readings;
    expect(read?.takeOffMm).toBeCloseTo(0.5, 2);
    expect(read?.mostTakeOffMm).toBeCloseTo(0.5, 2);
    expect(read?.wallMm).toBeCloseTo(6 - 0.5 - 0.5 - 0.5, 2);
    expect(read?.holds).toBe(true);
  });

  it('that would be gone stand against the plan', () => {
    const answer = plan(withReading({ at: [62, 12], depthMm: 10, wallMm: 4, errorMm: 0.6 }));
    expect(answer.readings[0]?.holds).toBe(false);
    expect(answer.holds).toBe(false);
  });

  it('far from the cut, or far along the depth, say nothing of it', () => {
    for (const reading of [
      { at: [0, 0] as [number, number], depthMm: 10, wallMm: 4, errorMm: 0.6 },
      { at: [62, 12] as [number, number], depthMm: 80, wallMm: 4, errorMm: 0.6 },
    ]) {
      const answer = plan(withReading(reading));
      expect(answer.readings).toEqual([]);
      expect(answer.unmeasured).toMatchObject([{ section: 'bar', depth: [0, 20] }]);
    }
  });
});

describe('a cut near which no wall is known', () => {
  it('is named, at its deepest', () => {
    const { unmeasured, holds } = plan(bar);
    expect(unmeasured).toHaveLength(1);
    expect(unmeasured[0]?.at[0]).toBeCloseTo(60, 0);
    expect(holds).toBe(true);
  });

  it('is not where a hollow is known', () => {
    const hollow = { id: 'gallery', depth: [0, 20] as const, loops: [disc(60, 3, 1)] };
    const fixed = castingOf({
      sections: [{ id: 'bar', depth: [0, 20], mayCut: true, loops: [box(0, 0, 120, 12)] }],
      hollows: [hollow],
    });
    expect(plan({ ...bar, fixed }).unmeasured).toEqual([]);
  });
});
