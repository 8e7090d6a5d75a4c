import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import type { CheckResult } from '../../../src/clearance/check-result.ts';
import { verifyCheck } from '../../../src/clearance/verify/verify.ts';
import type { DoubtCode } from '../../../src/clearance/verify/verify-doubt.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { demoToDraw } from '../../support/demos.ts';
import { jointOf } from '../../support/joints.ts';
import { Random } from '../../support/random.ts';
import { randomJob } from '../../support/random-jobs.ts';

const doubtsOf = (joint: Joint, check: CheckResult): DoubtCode[] =>
  drain(verifyCheck(joint, check)).doubts.map(({ what }) => what);

describe('a right result raises no doubt', () => {
  it.each(['transfer-case', 'starter', 'adapter'] as const)('the demo %s', (name) => {
    const { joint, check } = demoToDraw(name);
    expect(drain(verifyCheck(joint, check)).doubts).toEqual([]);
  });

  it.each(Array.from({ length: 12 }, (_, seed) => seed))('random job %i', (seed) => {
    const joint = jointOf(randomJob(new Random(seed)));
    expect(drain(verifyCheck(joint, drain(checkJoint(joint)))).doubts).toEqual([]);
  });
});

describe('a figure made wrong raises a doubt', () => {
  const { joint, check } = demoToDraw('transfer-case');
  const { home, wayIn } = check;
  if (wayIn === null || home.clearanceMm === null || home.nearest === null || wayIn.firstTouch === null) {
    throw new Error('the demo has a way in that fouls and a home that is clear');
  }
  const [fouling] = wayIn.fouling;
  if (fouling === undefined) throw new Error('the demo fouls on the way in');
  const { clearanceMm, nearest } = home;
  const { firstTouch } = wayIn;

  const falsified: readonly (readonly [string, CheckResult])[] = [
    ['a home clearance 0.01 too large', { ...check, home: { ...home, clearanceMm: clearanceMm + 0.01 } }],
    ['a home clearance 0.01 too small', { ...check, home: { ...home, clearanceMm: clearanceMm - 0.01 } }],
    ['a home that is said to foul', { ...check, home: { ...home, state: 'fouls', clearanceMm: 0 } }],
    [
      'a witness 0.01 off its outline',
      {
        ...check,
        home: { ...home, nearest: { ...nearest, fixedAt: vec(nearest.fixedAt.x + 0.01, nearest.fixedAt.y) } },
      },
    ],
    ['a way in that is said to be clear', { ...check, wayIn: { ...wayIn, state: 'clear', clearanceMm: 2 } }],
    [
      'a fouling stretch a tenth too short',
      {
        ...check,
        wayIn: {
          ...wayIn,
          fouling: [{ ...fouling, to: { ...fouling.to, at: fouling.to.at - 0.1 * (fouling.to.at - fouling.from.at) } }],
        },
      },
    ],
    [
      'a first touch 0.01 later',
      { ...check, wayIn: { ...wayIn, firstTouch: { ...firstTouch, at: firstTouch.at + 0.01 } } },
    ],
    [
      'a foul area far too small',
      { ...check, wayIn: { ...wayIn, foul: { ...wayIn.foul, areaMm2: wayIn.foul.areaMm2 * 0.5 } } },
    ],
    [
      'a worst clearance 0.1 too good',
      { ...check, home: { ...home, worstClearanceMm: (home.worstClearanceMm ?? 0) + 0.1 } },
    ],
    ['an end gap 0.1 too large', { ...check, home: { ...home, endGapMm: (home.endGapMm ?? 0) + 0.1 } }],
    ['a verdict that says it goes', { ...check, verdict: 'goes', meetsClearance: true }],
    [
      'a rotating part 0.05 farther off',
      {
        ...check,
        rotating: check.rotating.map((r) => ({
          ...r,
          clearanceMm: r.clearanceMm === null ? null : r.clearanceMm + 0.05,
        })),
      },
    ],
  ];

  it.each(falsified)('%s', (_, wrong) => {
    expect(doubtsOf(joint, wrong).length).toBeGreaterThan(0);
  });

  it('dowels that agree better than they do', () => {
    expect(doubtsOf({ ...joint, dowelUp: { ...joint.dowelUp, rmsMm: 0 } }, check)).toContain('dowel-rms');
  });
});
