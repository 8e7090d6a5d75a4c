import { describe, expect, it } from 'vitest';
import type { CheckAnswer } from '../../../src/answers/check-answer.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { verifyCheck } from '../../../src/clearance/verify/verify.ts';
import type { DoubtCode } from '../../../src/clearance/verify/verify-doubt.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { demoToDraw } from '../../support/demos.ts';
import { jointOf } from '../../support/joints.ts';
import { Random } from '../../support/random.ts';
import { randomJob } from '../../support/random-jobs.ts';

const doubtsOf = (joint: Joint, answer: CheckAnswer): DoubtCode[] =>
  drain(verifyCheck(joint, answer)).doubts.map(({ what }) => what);

describe('a right answer raises no doubt', () => {
  it.each(['transfer-case', 'starter', 'adapter'] as const)('the demo %s', (name) => {
    const { joint, check } = demoToDraw(name);
    expect(drain(verifyCheck(joint, check.answer)).doubts).toEqual([]);
  });

  it.each(Array.from({ length: 12 }, (_, seed) => seed))('random job %i', (seed) => {
    const joint = jointOf(randomJob(new Random(seed)));
    expect(drain(verifyCheck(joint, drain(checkJoint(joint)).answer)).doubts).toEqual([]);
  });
});

describe('a figure made wrong raises a doubt', () => {
  const { joint, check } = demoToDraw('transfer-case');
  const { answer } = check;
  const { home, install } = answer;
  if (install === null || home.clearanceMm === null || home.nearest === null || install.firstTouch === null) {
    throw new Error('the demo has a way in that fouls and a home that is clear');
  }
  const [fouling] = install.fouling;
  if (fouling === undefined) throw new Error('the demo fouls on the way in');
  const { clearanceMm, nearest } = home;
  const { firstTouch } = install;

  const falsified: readonly (readonly [string, CheckAnswer])[] = [
    ['a home clearance 0.01 too large', { ...answer, home: { ...home, clearanceMm: clearanceMm + 0.01 } }],
    ['a home clearance 0.01 too small', { ...answer, home: { ...home, clearanceMm: clearanceMm - 0.01 } }],
    ['a home that is said to foul', { ...answer, home: { ...home, state: 'fouls', clearanceMm: 0 } }],
    [
      'a witness 0.01 off its outline',
      {
        ...answer,
        home: { ...home, nearest: { ...nearest, fixedAt: [nearest.fixedAt[0] + 0.01, nearest.fixedAt[1]] } },
      },
    ],
    ['a way in that is said to be clear', { ...answer, install: { ...install, state: 'clear', clearanceMm: 2 } }],
    [
      'a fouling stretch a tenth too short',
      {
        ...answer,
        install: { ...install, fouling: [{ ...fouling, toAt: fouling.toAt - 0.1 * (fouling.toAt - fouling.fromAt) }] },
      },
    ],
    [
      'a first touch 0.01 later',
      { ...answer, install: { ...install, firstTouch: { ...firstTouch, at: firstTouch.at + 0.01 } } },
    ],
    ['a foul area far too small', { ...answer, install: { ...install, foulAreaMm2: install.foulAreaMm2 * 0.5 } }],
    [
      'a worst clearance 0.1 too good',
      { ...answer, home: { ...home, worstClearanceMm: (home.worstClearanceMm ?? 0) + 0.1 } },
    ],
    ['an end gap 0.1 too large', { ...answer, home: { ...home, endGapMm: (home.endGapMm ?? 0) + 0.1 } }],
    ['a verdict that says it goes', { ...answer, verdict: 'goes', meetsClearance: true }],
    [
      'a rotating part 0.05 farther off',
      {
        ...answer,
        rotating: answer.rotating.map((r) => ({
          ...r,
          clearanceMm: r.clearanceMm === null ? null : r.clearanceMm + 0.05,
        })),
      },
    ],
    ['dowels that agree better than they do', { ...answer, dowelUp: { ...answer.dowelUp, rmsMm: 0 } }],
  ];

  it.each(falsified)('%s', (_, wrong) => {
    expect(doubtsOf(joint, wrong).length).toBeGreaterThan(0);
  });
});
