import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../../src/answers/check.ts';
import { checkAnswerSchema } from '../../../src/answers/check-answer.ts';
import { warningOf } from '../../../src/answers/warning.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { checkOf, foulingOf, homeOf, touchOf, wayInOf } from '../../support/answers.ts';
import { jointOf } from '../../support/joints.ts';

const third = 1 / 3;
const instant = { leg: 1, at: third, turnRad: third, standOffMm: third };
const places = { fixedAt: vec(third, -third), movingAt: vec(third, -0), fixedSection: 'a', movingSection: 'b' };
const foul = { areaMm2: third, deepestMm: third, regions: [] };
const measured = { clearanceMm: third, toleranceMm: third, errorMm: third, errorRssMm: third, foul };

describe('a check as JSON', () => {
  const joint = jointOf();
  const answer = checkAnswer(
    {
      ...joint,
      dowelUp: {
        turnRad: third,
        shift: vec(third, third),
        rmsMm: third,
        spacingErrorMm: -third,
        hand: 'agrees',
        pairs: [{ fixed: 'D1', moving: 'P1', offsetMm: third }],
      },
      bolts: [{ fixed: 'B1', moving: 'H1', offsetMm: third, allowedMm: third, linesUp: true }],
    },
    checkOf({
      home: homeOf({ ...measured, worstClearanceMm: -third, endGapMm: third, nearest: places }),
      wayIn: wayInOf({
        ...measured,
        alongCrankMm: third,
        nearest: { ...places, ...instant },
        firstTouch: touchOf({ ...instant, where: vec(third, third) }),
        fouling: [foulingOf({ from: instant, to: instant })],
      }),
      rotating: [
        {
          part: 'clutch',
          against: 'moving',
          state: 'clear',
          clearanceMm: third,
          toleranceMm: third,
          nearest: places,
          instant,
        },
      ],
    }),
  );

  it('is of its schema', () => {
    expect(checkAnswerSchema.safeParse(answer).error).toBeUndefined();
  });

  it('has every figure to a millionth, degrees from full radians, and tolerances never understated', () => {
    // a third of a radian is 19.098593171…°; of a rounded one it would be 19.098574°
    expect(answer.dowelUp.turnDeg).toBe(19.098593);
    expect(answer.install?.nearest?.turnDeg).toBe(19.098593);
    expect(answer.home).toMatchObject({ clearanceMm: 0.333333, toleranceMm: 0.333334, worstClearanceMm: -0.333333 });
    const figures = JSON.stringify(answer).match(/-?\d+\.\d+/g) ?? [];
    expect(figures.length).toBeGreaterThan(40);
    expect(figures.filter((figure) => (figure.split('.')[1] ?? '').length > 6)).toEqual([]);
    expect(JSON.stringify(answer)).not.toContain('-0,');
  });

  it('leaves the result as it was given', () => {
    const given = checkOf({ home: homeOf({ clearanceMm: third }) });
    checkAnswer(joint, given);
    expect(given.home.clearanceMm).toBe(third);
  });
});

describe('a notice as JSON', () => {
  it('has its place rounded, and none where it has none', () => {
    const bolt = { fixed: 'B1', moving: 'H1', offsetMm: 1.1, allowedMm: 0.75, at: vec(third, third) };
    expect(warningOf({ code: 'bolt-does-not-line-up', ...bolt }, 'mm')).toEqual({
      code: 'bolt-does-not-line-up',
      text: 'Bolt B1–H1 does not line up: 1.1 mm off, 0.75 mm allowed.',
      at: [0.333333, 0.333333],
    });
    expect(warningOf({ code: 'one-dowel-pair', fixed: 'D1', moving: 'P1' }, 'mm')).not.toHaveProperty('at');
  });
});
