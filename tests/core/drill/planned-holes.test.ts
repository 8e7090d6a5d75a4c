import { describe, expect, it } from 'vitest';
import { type DrillResult, drillResult } from '../../../src/drill/drill-result.ts';
import type { DrillRules } from '../../../src/drill/hole-metal.ts';
import type { JudgedHole } from '../../../src/drill/planned-holes.ts';
import type { Hole } from '../../../src/job/casting.ts';
import { drillText } from '../../../src/words/drill-text.ts';
import { box, castingOf, disc, holeOf } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const rules: DrillRules = { edgeFactor: 1.5, drillErrorMm: 0.5, spotFaceMm: null, socketMm: null };

const planned = (said: Partial<Hole> = {}): Hole => ({
  ...holeOf({ id: 'N1', kind: 'planned', at: [50, 0], depth: [0, 20] }),
  diameterMm: 10,
  ...said,
});

/** A ring from 30 to 80 about the axis, 20 deep, traced to ± 0.5. */
const ring = { id: 'ring', depth: [0, 20] as const, loops: [disc(0, 0, 80), disc(0, 0, 30)] };

function judged(hole: Hole, said: Parameters<typeof castingOf>[0] = {}, asked: Partial<DrillRules> = {}): JudgedHole {
  const fixed = castingOf({ sections: [ring], holes: [hole], ...said });
  const { planned: found } = drillResult(jointOf({ fixed, nothingShares: true }), null, { ...rules, ...asked });
  return found[0] as JudgedHole;
}

const at = (x: number, y = 0) => ({ at: { x, y } });

// closed forms: distances from a point to circles and to sides of a rectangle
describe('metal for a planned hole', () => {
  it('is there at worst in the middle of a ring: 15 mm of wall to either circle, 10 wanted', () => {
    const { verdict, metal } = judged(planned());
    expect(verdict).toBe('does');
    expect(metal?.walls[0]).toMatchObject({
      beside: 'outline',
      name: 'ring',
      wallMm: expect.closeTo(15, 9),
      wantedMm: 10,
    });
    expect(metal?.walls[0]?.errorMm).toBe(1);
    expect(metal?.run).toEqual({ fromMm: 0, toMm: 20 });
  });

  it('is there only as traced where the errors eat up what is to spare', () => {
    // 10.5 of wall, 10 wanted, 1 of error
    expect(judged(planned(at(64.5))).verdict).toBe('as-traced');
    expect(judged(planned(at(63.9))).verdict).toBe('does');
  });

  it('is not there where the middle is nearer to an edge than asked, and is where less is asked', () => {
    expect(judged(planned(at(68))).verdict).toBe('does-not');
    expect(judged(planned(at(68)), {}, { edgeFactor: 1 }).verdict).toBe('does');
    expect(judged(planned({ ...at(68), keepWallMm: 5 })).verdict).toBe('does');
  });

  it('is not there over an edge, and not in the air', () => {
    expect(judged(planned(at(77)))).toMatchObject({ verdict: 'does-not', metal: { stands: 'over-the-edge' } });
    expect(judged(planned(at(10)))).toMatchObject({ verdict: 'does-not', metal: { stands: 'in-the-air' } });
  });

  it('is judged over all of its depth: a hollow deeper in is broken into', () => {
    const hollow = {
      id: 'jacket',
      depth: [15, 19] as const,
      loops: [box(52, -9, 66, 9)],
      keepWallMm: 4,
      traceErrorMm: 0.5,
    };
    const deep = judged(planned(), { hollows: [hollow] });
    expect(deep.verdict).toBe('does-not');
    expect(deep.metal?.walls[0]).toMatchObject({ beside: 'hollow', name: 'jacket', wallMm: expect.closeTo(-3, 9) });
    const shallow = judged(planned({ depth: { fromMm: 0, toMm: 5 } }), { hollows: [hollow] });
    // 10 deeper in, less the 3.004 that the point of a drill of 118° goes past the full diameter
    expect(shallow.metal?.walls.find(({ name }) => name === 'jacket')?.wallMm).toBeCloseTo(
      10 - 5 / Math.tan(59 * (Math.PI / 180)),
      9,
    );
    expect(shallow.verdict).toBe('does');
    expect(judged(planned({ depth: { fromMm: 0, toMm: 12 } }), { hollows: [hollow] }).verdict).toBe('does-not');
  });

  it('leaves a floor under a blind hole, the point of the drill taken off', () => {
    const blind = (toMm: number) => judged(planned({ depth: { fromMm: 0, toMm } }));
    const floor = blind(11).metal?.walls.find(({ beside }) => beside === 'floor');
    expect(floor).toMatchObject({
      name: 'ring',
      wallMm: expect.closeTo(9 - 5 / Math.tan(59 * (Math.PI / 180)), 9),
      wantedMm: 5,
    });
    expect([9, 11, 13].map((toMm) => blind(toMm).verdict)).toEqual(['does', 'as-traced', 'does-not']);
    expect(blind(20).metal?.walls.some(({ beside }) => beside === 'floor')).toBe(false);
  });

  it('keeps from other holes what they keep: half their diameter, or their own wall', () => {
    const other = holeOf({ id: 'B1', kind: 'tapped', at: [50, 20], diameterMm: 12 });
    // 20 between the middles less 5 and 6; wanted 6
    expect(
      judged(planned(), { holes: [planned(), other] }).metal?.walls.find(({ name }) => name === 'B1'),
    ).toMatchObject({
      wallMm: expect.closeTo(9, 9),
      wantedMm: 6,
    });
    const near = { ...other, at: { x: 50, y: 16 } };
    expect(judged(planned(), { holes: [planned(), near] }).verdict).toBe('does-not');
  });

  it('cannot be told deeper than anything is traced, nor without a size', () => {
    const deep = judged(planned({ depth: { fromMm: 0, toMm: 30 } }));
    expect(deep.verdict).toBe('undecided');
    expect(deep.metal?.without).toEqual([{ fromMm: 20, toMm: 30 }]);
    expect(judged(planned({ diameterMm: null })).verdict).toBe('undecided');
    expect(judged(planned({ diameterMm: null, thread: 'M10x1.5' })).diameterMm).toBe(10);
  });

  it('cannot be told beyond where the casting was traced', () => {
    const traced = { depth: null, loops: [disc(0, 0, 53)] };
    expect(judged(planned(), { traced }).verdict).toBe('undecided');
    expect(judged(planned(), { traced: { depth: null, loops: [disc(0, 0, 66)] } }).verdict).toBe('does');
  });

  it('cannot be told where only a section without a depth would be about it', () => {
    const sections = [{ ...ring, depth: null }];
    expect(judged(planned(), { sections })).toMatchObject({ verdict: 'undecided', metal: { stands: 'no-depth' } });
    expect(judged(planned(), { sections: [ring, ...sections.map((one) => ({ ...one, id: 'outline' }))] }).verdict).toBe(
      'does',
    );
  });

  it('cannot be told beside a hole of no known size', () => {
    const other = holeOf({ id: 'B1', kind: 'tapped', at: [50, 12] });
    const { verdict, metal } = judged(planned(), { holes: [planned(), other] });
    expect([verdict, metal?.unsized]).toEqual(['undecided', ['B1']]);
    const aside = holeOf({ id: 'B1', kind: 'tapped', at: [0, 50] });
    expect(judged(planned(), { holes: [planned(), aside] }).verdict).toBe('does');
  });

  it('keeps half its diameter from a hollow that states no wall, and the errors of depth count along the crank', () => {
    const jacket = (from: number) => [
      { id: 'jacket', depth: [from, 30] as const, loops: [disc(50, 0, 20)], traceErrorMm: 0.5 },
    ];
    const blind = planned({ depth: { fromMm: 0, toMm: 6 } });
    const wall = (from: number) =>
      judged(blind, { hollows: jacket(from) }).metal?.walls.find(({ name }) => name === 'jacket');
    expect(wall(15)?.wantedMm).toBe(5);
    // half a millimetre each of tracing and drill, and 1 of depth
    expect(wall(15)?.errorMm).toBe(2);
    expect(judged(blind, { hollows: jacket(12) }).verdict).toBe('does-not');
  });

  it('wants no more to a bore than to an edge', () => {
    const bore = holeOf({ id: 'AXIS', kind: 'bore', at: [0, 0], diameterMm: 60 });
    const wall = judged(planned(), { holes: [planned(), bore] }).metal?.walls.find(({ name }) => name === 'AXIS');
    expect(wall).toMatchObject({ wallMm: expect.closeTo(15, 9), wantedMm: 10 });
  });

  it('is that of all sections which stand there together: where they overlap there is no edge', () => {
    const halves = [
      { id: 'left', depth: [0, 20] as const, loops: [box(0, -40, 52, 40)] },
      { id: 'right', depth: [0, 20] as const, loops: [box(48, -40, 100, 40)] },
    ];
    expect(judged(planned(), { sections: halves })).toMatchObject({ verdict: 'does', metal: { stands: 'in-metal' } });
  });

  it('runs into what must not be cut, and says so', () => {
    const doNotCut = [{ id: 'ear', depth: null, loops: [box(54, -5, 70, 5)] }];
    expect(judged(planned(), { doNotCut }).metal?.walls[0]).toMatchObject({
      beside: 'do-not-cut',
      wallMm: expect.closeTo(-1, 9),
    });
  });
});

describe('the head of a bolt', () => {
  const open = planned({ thread: 'M10x1.5', diameterMm: 11, depth: { fromMm: 0, toMm: 20 } });

  it('needs metal under the washer of its thread where the hole comes out: 20 mm for M10 by ISO 7089, from memory', () => {
    expect(judged(open).spotFace).toEqual({
      part: 'fixed',
      acrossMm: 20,
      depthMm: 20,
      spareMm: expect.closeTo(10, 9),
      errorMm: 0.5,
    });
    expect(judged({ ...open, ...at(72) }).spotFace?.spareMm).toBeCloseTo(-2, 9);
    // 0.3 to spare, 0.5 of tracing error
    const tight = { ...open, ...at(69.7), keepWallMm: 1 };
    expect(judged(tight)).toMatchObject({ verdict: 'as-traced', spotFace: { spareMm: expect.closeTo(0.3, 9) } });
    expect(judged(open, {}, { spotFaceMm: 30 }).spotFace?.acrossMm).toBe(30);
  });

  it('has none on a blind hole', () => {
    expect(judged({ ...open, depth: { fromMm: 0, toMm: 12 } }).spotFace).toBeNull();
  });

  it('leaves a socket so much room to what stands farther back', () => {
    const wall = { id: 'wall', depth: [20, 90] as const, loops: [box(66, -40, 70, 40)] };
    const { headRoom } = judged(open, { sections: [ring, wall] }, { socketMm: 24 });
    expect(headRoom).toMatchObject({ part: 'fixed', section: 'wall', gapMm: expect.closeTo(4, 9), fromMm: 20 });
    // without one the washer's 20 mm are kept free
    expect(judged(open, { sections: [ring, wall] }).headRoom?.gapMm).toBeCloseTo(6, 9);
  });
});

describe('what is said first', () => {
  const told = (holes: readonly Hole[]): string => {
    const joint = jointOf({ fixed: castingOf({ sections: [ring], holes }), nothingShares: true });
    const result: DrillResult = drillResult(joint, null, rules);
    return drillText(joint, result).split('\n')[0] ?? '';
  };

  it('names the holes there is no metal for, then those of which it cannot be told, then what the errors may eat up', () => {
    const bad = planned({ id: 'N2', ...at(77) });
    const untold = planned({ id: 'N3', diameterMm: null, ...at(-50) });
    expect(told([planned(), bad, untold])).toBe('NO METAL for "N2" as planned.');
    expect(told([planned(), untold])).toBe('UNDECIDED: it cannot be told whether there is metal for "N3".');
    expect(told([planned(at(64.5))])).toMatch(
      /^THERE IS METAL for every planned hole as traced; the errors could eat it up/,
    );
    expect(told([planned()])).toBe('THERE IS METAL for every planned hole, even with every error against you.');
  });
});
