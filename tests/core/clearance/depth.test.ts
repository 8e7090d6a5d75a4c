import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { verifyCheck } from '../../../src/clearance/verify/verify.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { box, castingOf, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

/** A flange with a boss before its face, and a flange that is slid over it at a stand-off and then pushed home beside it. */
const overBoss = (proudMm: number, standOff: number, said: Partial<JobSpec> = {}) =>
  jointOf({
    fixed: castingOf({
      name: 'block',
      sections: [
        { id: 'flange', depth: [0, 12], loops: [box(-200, -50, 200, 50)] },
        { id: 'boss', depth: [-proudMm, 0], loops: [box(-10, -10, 10, 10)], mayCut: true },
      ],
    }),
    moving: castingOf({
      name: 'housing',
      sections: [{ id: 'flange', depth: [0, 14], loops: [box(20, -20, 60, 20)] }],
    }),
    offerUp: [{ standOff: 60, shift: [-100, 0] }, { standOff, shift: [-100, 0] }, { standOff }, {}],
    clearance: 2,
    depthMarginMm: 2,
    ...said,
  });

const check = (joint: ReturnType<typeof jointOf>) => drain(checkJoint(joint));

describe('depth', () => {
  it('of mating flanges at home is no foul: both facing ends lie on their mating faces', () => {
    const { home } = check(overBoss(5, 20));
    expect(home).toMatchObject({ state: 'clear', alongCrankMm: null });
  });

  it('of a boss that stands proud to the stand-off at which a flange is moved over it is a foul, 0 mm apart', () => {
    const { verdict, wayIn } = check(overBoss(14, 14));
    expect(verdict).toBe('fouls');
    expect(wayIn).toMatchObject({ state: 'fouls', alongCrankMm: 0, endGapMm: 0 });
  });

  it.each([
    { standOff: 15, state: 'fouls', alongCrankMm: 1 },
    { standOff: 15.999, state: 'fouls', alongCrankMm: 1.999 },
    { standOff: 16, state: 'clear', alongCrankMm: null },
  ])('of a boss 14 proud under a flange at $standOff, 2 asked along the crank: $state', (expected) => {
    const { wayIn } = check(overBoss(14, expected.standOff));
    expect(wayIn?.state).toBe(expected.state);
    if (expected.alongCrankMm === null) expect(wayIn?.alongCrankMm).toBeNull();
    else expect(wayIn?.alongCrankMm).toBeCloseTo(expected.alongCrankMm, 6);
  });

  // both gauged to ±1, but the flange's own end is its mating face and has no error: 14 + 1 and the margin of 2
  it.each([
    { standOff: 16.5, verdict: 'should-go', worst: -1 },
    { standOff: 17.5, verdict: 'goes', worst: 9 },
  ])('of a boss gauged to ±1 under a flange at $standOff: $verdict', ({ standOff, verdict, worst }) => {
    const joint = overBoss(14, standOff);
    const found = check(joint);
    expect(found.verdict).toBe(verdict);
    expect(found.wayIn?.clearanceMm).toBeCloseTo(10, 6);
    expect(found.wayIn?.worstClearanceMm).toBeCloseTo(worst, 6);
    expect(drain(verifyCheck(joint, found)).doubts).toEqual([]);
  });

  it('of a face no margin is asked of, but of every other end', () => {
    // a lip 1 mm behind the flange it hooks round
    const hooked = (depth: [number, number]) =>
      check(
        jointOf({
          fixed: castingOf({ sections: [{ id: 'flange', depth: [0, 12], loops: [box(0, 0, 50, 50)] }] }),
          moving: castingOf({ sections: [{ id: 'lip', depth, loops: [box(20, 20, 80, 40)] }] }),
          depthMarginMm: 2,
        }),
      ).home;
    expect(hooked([-30, -13])).toMatchObject({ state: 'fouls', alongCrankMm: 1 });
    expect(hooked([-30, -14])).toMatchObject({ state: 'clear', endGapMm: 2 });
    expect(hooked([0, 14])).toMatchObject({ state: 'clear', endGapMm: null });
  });
});
