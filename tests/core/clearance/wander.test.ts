import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../../src/answers/check.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { forgivenBy } from '../../../src/clearance/wander/forgiven.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { noWander, type Wander } from '../../../src/job/wander.ts';
import { checkText } from '../../../src/words/check-text.ts';
import { castingOf, disc, dowel, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const deg = Math.PI / 180;

/** A peg 50 from the axis that slides straight in past one fixed 30° round from it, both of radius 5 and 20 deep. */
const pegs = (wander: Wander | null, said: JobSpec = {}) =>
  jointOf({
    fixed: castingOf({ sections: [{ id: 'pin', depth: [-20, 0], loops: [disc(50, 0, 5)] }] }),
    moving: castingOf({
      sections: [{ id: 'peg', depth: [-20, 0], loops: [disc(50 * Math.cos(30 * deg), 50 * Math.sin(30 * deg), 5)] }],
    }),
    offerUp: [{ standOff: 60 }, {}],
    clearance: 2,
    wander,
    nothingShares: true,
    ...said,
  });

/** Between the edges of the two pegs where they stand so far round from one another. */
const apartMm = (byDeg: number): number => 2 * 50 * Math.sin((byDeg * deg) / 2) - 10;

const checked = (wander: Wander | null, said: JobSpec = {}) => drain(checkJoint(pegs(wander, said)));

// closed forms: a chord of the circle both pegs stand on; a rocked point's way, in the plane
describe('a way in that is strayed from', () => {
  it('turned astray comes nearer by the chord', () => {
    const { wander } = checked({ ...noWander, turnRad: 5 * deg });
    expect(wander?.clearanceMm).toBeCloseTo(apartMm(25), 4);
  });

  it('shifted astray comes nearer by the shift', () => {
    const { wander } = checked({ ...noWander, shiftMm: 1.5 });
    expect(wander?.clearanceMm).toBeCloseTo(apartMm(30) - 1.5, 4);
  });

  it('rocked astray comes nearer by d sin τ + r (1 − cos τ)', () => {
    const tiltRad = 2 * deg;
    const { wander } = checked({ ...noWander, tiltRad });
    // the box round the peg reaches to its corner
    const reachMm = Math.hypot(50 * Math.cos(30 * deg) + 5, 50 * Math.sin(30 * deg) + 5);
    const nearerMm = 20 * Math.sin(tiltRad) + reachMm * (1 - Math.cos(tiltRad));
    expect(wander?.clearanceMm).toBeCloseTo(apartMm(30) - nearerMm, 4);
  });

  it('at another stand-off meets what the way itself passes by', () => {
    // swung home 3 in front of the pin
    const offerUp = [{ standOff: 80, turn: -60 }, { standOff: 43, turn: -60 }, { standOff: 43 }, {}];
    expect(checked({ ...noWander, standOffMm: 0.9 }, { offerUp, depthMarginMm: 2 }).wander?.clearanceMm).toBeCloseTo(
      apartMm(30),
      4,
    );
    expect(checked({ ...noWander, standOffMm: 1.1 }, { offerUp, depthMarginMm: 2 }).wander?.clearanceMm).toBe(0);
  });

  it('counts the errors of tracing on top at worst', () => {
    const { wander } = checked({ ...noWander, shiftMm: 1.5 });
    expect(wander?.worstClearanceMm).toBeCloseTo(apartMm(30) - 1.5 - 1, 4);
  });

  it('decides the verdict where the way itself keeps what is asked', () => {
    const wander = { ...noWander, turnRad: 17 * deg };
    const check = checked(wander);
    expect(check).toMatchObject({ verdict: 'too-close', meetsClearance: false, wander: { decides: true } });
    expect(checked(null)).toMatchObject({ verdict: 'goes', meetsClearance: true, wander: null });
    expect(checkText(pegs(wander), check)).toMatch(
      /^TOO CLOSE: it keeps the clearance you asked for where nobody strays from the way in, but not\s+within the wander/,
    );
  });

  it('is never told to foul by what may be strayed alone', () => {
    const check = checked({ ...noWander, turnRad: 25 * deg });
    expect(check.verdict).toBe('too-close');
    expect(checkText(pegs({ ...noWander, turnRad: 25 * deg }), check)).toMatch(/way in, astray\s+clear\s+may touch/);
  });

  it('cannot be told where metal without depth is rocked, and says which', () => {
    const rocked = { ...noWander, tiltRad: 1 * deg };
    const moving = castingOf({ sections: [{ id: 'peg', depth: null, loops: [disc(0, 50, 5)] }] });
    const check = checked(rocked, { moving });
    expect(check).toMatchObject({ verdict: 'undecided', wander: { state: 'undecided', clearanceMm: 0 } });
    expect(check.notices).toContainEqual({ code: 'tilt-needs-depths', sections: ['peg'] });
  });

  it('is undecided where metal may stand that nobody has traced', () => {
    const traced = { depth: null, loops: [disc(0, 0, 58)] };
    const moving = { ...pegs(null).moving, traced };
    expect(checked({ ...noWander, turnRad: 1 * deg }, { moving }).wander?.state).toBe('clear');
    expect(checked({ ...noWander, shiftMm: 2 }, { moving }).wander?.state).toBe('undecided');
  });
});

describe('dowels', () => {
  const two = [dowel('D1', [-80, 0], 30), dowel('D2', [-80, 40], 12)] as const;
  const holes = [dowel('P1', [-80, 0]), dowel('P2', [-80, 40])] as const;
  const onDowels = (count: 1 | 2, wander: Wander) => {
    const { fixed, moving } = pegs(null);
    return checked(wander, {
      fixed: { ...fixed, holes: two.slice(0, count) },
      moving: { ...moving, holes: holes.slice(0, count) },
      dowels: [['D1', 'P1'] as const, ['D2', 'P2'] as const].slice(0, count),
      // the pin's last 10 mm and the peg's share depth below a stand-off of 10 only
      depthMarginMm: 0,
    });
  };

  it('guide once two of them are in: below the shorter one nothing strays', () => {
    const fixed = castingOf({ sections: [{ id: 'pin', depth: [0, 10], loops: [disc(50, 0, 5)] }], holes: [...two] });
    const said = {
      fixed,
      moving: { ...pegs(null).moving, holes: [...holes] },
      dowels: [['D1', 'P1'] as const, ['D2', 'P2'] as const],
      depthMarginMm: 0,
    };
    // pin 0 to 10 behind the face, peg to 20 proud: they share depth from a stand-off of 20 inward
    const wander = { ...noWander, shiftMm: 1 };
    expect(checked(wander, said).wander?.clearanceMm).toBeCloseTo(apartMm(30) - 1, 4);
    const shallow = castingOf({
      sections: [{ id: 'peg', depth: [-11, 0], loops: pegs(null).moving.sections[0]?.loops ?? [] }],
      holes: [...holes],
    });
    // only from 11 inward, where both are in
    expect(checked(wander, { ...said, moving: shallow }).wander?.clearanceMm).toBeCloseTo(apartMm(30), 4);
    // about a single one it still turns
    const one = { ...said, moving: shallow, dowels: said.dowels.slice(0, 1) };
    expect(checked(wander, one).wander?.clearanceMm).toBeCloseTo(apartMm(30) - 1, 4);
  });

  it('do not keep a hand from straying while only the longer one is in', () => {
    expect(onDowels(2, { ...noWander, shiftMm: 1 }).wander?.clearanceMm).toBeCloseTo(apartMm(30) - 1, 4);
    expect(onDowels(1, { ...noWander, shiftMm: 1 }).wander?.clearanceMm).toBeCloseTo(apartMm(30) - 1, 4);
  });
});

describe('what a way in forgives', () => {
  it('is the turn, and the shift, at which the pegs just do not touch', () => {
    const forgiven = forgivenBy(pegs(null));
    const touchDeg = 30 - (2 * Math.asin(0.1)) / deg;
    expect(forgiven?.each.turnRad).toBeLessThanOrEqual(touchDeg * deg);
    expect(forgiven?.each.turnRad).toBeCloseTo(Math.min(15, touchDeg) * deg, 3);
    expect(forgiven?.each.shiftMm).toBeLessThanOrEqual(apartMm(30));
    expect(forgiven?.each.shiftMm).toBeCloseTo(apartMm(30), 2);
  });

  it('is nothing where it touches as it is, or only home is asked', () => {
    expect(forgivenBy(pegs(null, { moving: pegs(null).fixed }))).toBeNull();
    expect(forgivenBy(pegs(null, { offerUp: [] }))).toBeNull();
  });

  it('counts faces that come together as no foul: rocked at home they close', () => {
    const flange = [{ id: 'flange', depth: [0, 10] as const, loops: [disc(0, 0, 40)] }];
    const joint = jointOf({
      fixed: castingOf({ sections: flange }),
      moving: castingOf({ sections: flange }),
      offerUp: [{ standOff: 60 }, {}],
      nothingShares: true,
    });
    expect(forgivenBy(joint)?.each.tiltRad).toBeCloseTo(5 * deg, 4);
  });
});

describe('the answer as JSON', () => {
  it('says nothing of straying where the fit does not', () => {
    const [joint, astray] = [pegs(null), pegs({ ...noWander, shiftMm: 1 })];
    expect(checkAnswer(joint, drain(checkJoint(joint)))).not.toHaveProperty('astray');
    expect(checkAnswer(astray, drain(checkJoint(astray))).astray).toMatchObject({
      wander: { turn: 0, standOff: 0, shift: 1, tilt: 0 },
      clearanceMm: expect.closeTo(apartMm(30) - 1, 5),
      nearest: { fixedSection: 'pin', movingSection: 'peg', leg: 1 },
    });
  });
});
