import { describe, expect, it } from 'vitest';
import type { AlternativeAnswer, GrindAnswer } from '../../../src/answers/grind-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { box, castingOf, disc, type JobSpec, ringPiece } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';

const plan = (spec: JobSpec): GrindAnswer => answerTo(jointOf(spec), true);

const ofKind = ({ alternatives }: GrindAnswer, what: AlternativeAnswer['what']): AlternativeAnswer[] =>
  (alternatives ?? []).filter((other) => other.what === what);

const iron = { name: 'grey-iron', densityGPerCm3: 7.2 };

/** A body Ø96 beside a boss Ø34, 62.5 apart, with a drilling Ø8 in the boss: cut by 2.5 and the clearance. */
const bossed = (keepWallMm: number, bodyMayBeCut: boolean): JobSpec => ({
  clearance: 1.5,
  fixed: castingOf({
    material: iron,
    sections: [{ id: 'boss', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17)] }],
    hollows: [{ id: 'drilling', depth: [0, 28], loops: [disc(62.5, 0, 4)], keepWallMm, traceErrorMm: 0.5 }],
  }),
  moving: castingOf({
    material: iron,
    sections: [{ id: 'body', depth: [-28, 0], mayCut: bodyMayBeCut, loops: [disc(0, 0, 48)] }],
  }),
});

describe('where a plan does not hold', () => {
  // of the wall 10.5 − clearance is left, 0.5 for the body's error, the hand's and the drilling's each taken off
  const answer = plan(bossed(8, true));

  it('the largest smaller clearance that holds is found to 0.05', () => {
    expect(answer.holds).toBe(false);
    const [smaller] = ofKind(answer, 'clearance');
    expect(smaller).toMatchObject({ holds: true, part: 'fixed', against: [] });
    expect(smaller?.homeMm).toBeLessThanOrEqual(1);
    expect(smaller?.homeMm).toBeGreaterThan(1 - 0.051);
  });

  it('the other part is planned in full', () => {
    const [other] = ofKind(answer, 'other-part');
    expect(other).toMatchObject({ part: 'moving', holds: true });
    expect(other?.massG).toBeGreaterThan(0);
  });

  it('both parts are planned as shared', () => {
    expect(ofKind(answer, 'both')).toMatchObject([{ part: 'both', holds: true }]);
  });

  it('what bars it even at no clearance is said', () => {
    const [none] = ofKind(plan(bossed(12, true)), 'clearance');
    expect(none).toMatchObject({ homeMm: 0, wayInMm: 0, holds: false });
    expect(none?.against.join()).toContain('"drilling"');
  });

  it('what is not offered stands against the other part, and its cost is told all the same', () => {
    const [other] = ofKind(plan(bossed(8, false)), 'other-part');
    expect(other).toMatchObject({ holds: false, against: ['"body" is not offered'] });
    expect(other?.massG).toBeGreaterThan(0);
  });

  it('lengths are told in the units of the job', () => {
    const told = ofKind(plan({ ...bossed(12, true), units: 'in' }), 'clearance')[0]?.against.join() ?? '';
    const metric = ofKind(plan(bossed(12, true)), 'clearance')[0]?.against.join() ?? '';
    const [mm, inch] = [/^(\d+\.\d) mm is left/.exec(metric)?.[1], /^(\d\.\d\d) in is left/.exec(told)?.[1]];
    expect(Number(inch)).toBeCloseTo(Number(mm) / 25.4, 2);
    expect(told).not.toContain('mm');
  });

  it('is an answer of its format', () => {
    expect(grindAnswerSchema.parse(answer)).toEqual(answer);
  });
});

it('a plan that holds has no alternatives, and none are worked out unasked', () => {
  expect(plan(bossed(5, true)).alternatives).toEqual([]);
  expect(answerTo(jointOf(bossed(8, true))).alternatives).toBeNull();
});

describe('another way in', () => {
  /** A lip that is turned home past a post which is not offered: entering 5° less turned, it never passes it. */
  const turned: JobSpec = {
    offerUp: [{ standOff: 60, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14 }, {}],
    fixed: castingOf({ sections: [{ id: 'post', depth: [0, 90], loops: [ringPiece(170, 185, 10, 11)] }] }),
    moving: castingOf({ sections: [{ id: 'lip', depth: [-44, -30], loops: [ringPiece(177, 200, -10, -6)] }] }),
  };

  it('that needs no cut is found, and does keep the clearance', () => {
    const ways = ofKind(plan(turned), 'turn');
    const free = ways.filter(({ areaMm2 }) => areaMm2 === 0);
    expect(free.length).toBeGreaterThan(0);
    for (const { turnDeg, holds } of free) {
      expect(holds).toBe(true);
      const turn = 20 + (turnDeg as number);
      const offerUp = [{ standOff: 60, turn }, { standOff: 14, turn }, { standOff: 14 }, {}];
      expect(drain(checkJoint(jointOf({ ...turned, offerUp }))).meetsClearance).toBe(true);
    }
  });

  it('farther out is found where the lip then swings clear of what it met', () => {
    const short = castingOf({ sections: [{ id: 'post', depth: [20, 90], loops: [ringPiece(170, 185, 2, 3)] }] });
    const ways = ofKind(plan({ ...turned, fixed: short, depthMarginMm: 0 }), 'stand-off');
    // the lip reaches from face 30 − 14 to 44 − 14; 10 farther out it ends at face 20
    expect(ways).toMatchObject([{ standOffMm: 10, holds: true, areaMm2: 0 }]);
  });
});

describe('a clearance far too wide, of which a great part of the casting would go', () => {
  /** A body Ø96, 2 beside a block of 150 × 240 with a drilling by the edge. */
  const asked = (clearance: number): GrindAnswer =>
    plan({
      clearance,
      fixed: castingOf({
        sections: [{ id: 'block', depth: [0, 20], mayCut: true, traceErrorMm: 0, loops: [box(0, -20, 150, 220)] }],
        hollows: [{ id: 'drilling', depth: [0, 20], loops: [disc(10, 100, 4)], keepWallMm: 3, traceErrorMm: 0 }],
      }),
      moving: castingOf({ sections: [{ id: 'body', depth: [-20, 0], traceErrorMm: 0, loops: [disc(-50, 100, 48)] }] }),
    });

  // a segment of a circle of 48 and the clearance, its chord 50 from the middle: r² acos(d/r) − d √(r² − d²)
  it('is said with what it takes, and what else would give is not looked for', () => {
    const { alternatives, holds, warnings } = asked(80);
    expect(holds).toBe(false);
    expect(alternatives).toEqual([]);
    const segmentMm2 = 128 ** 2 * Math.acos(50 / 128) - 50 * Math.sqrt(128 ** 2 - 50 ** 2);
    const share = Math.round((100 * segmentMm2) / 36_000);
    expect(warnings.map(({ text }) => text).join(' ')).toContain(
      `${Math.round(segmentMm2)} mm², ${share} % of the largest section traced`,
    );
  });

  it('is planned like any other where it takes less', () => {
    const { alternatives, warnings } = asked(60);
    expect(warnings.map(({ text }) => text).join(' ')).not.toContain('largest section traced');
    expect(alternatives).not.toEqual([]);
  });
});
