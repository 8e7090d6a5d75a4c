import { describe, expect, it } from 'vitest';
import type { BandAnswer, GrindAnswer } from '../../../src/answers/grind-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { loopFaults } from '../../../src/geometry/plane/loop-faults.ts';
import { difference } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { regionAreaMm2, regionOverlapAreaMm2 } from '../../../src/geometry/polygons/region-measures.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import { box, castingOf, disc, type JobSpec, ringPiece } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';

const plan = (spec: JobSpec): GrindAnswer => answerTo(jointOf(spec));

const regionOf = (loops: BandAnswer['loops']): Region => loops.map((loop) => loopOf(loop, 1));

const areaOf = (loops: BandAnswer['loops']): number => regionAreaMm2(regionOf(loops));

const onlyBand = (answer: GrindAnswer): BandAnswer => {
  expect(answer.sections.map(({ bands }) => bands.length)).toEqual([1]);
  return answer.sections[0]?.bands[0] as BandAnswer;
};

/** Area two circles share, by circular segments. */
function lensMm2(d: number, r: number, s: number): number {
  const [a, b] = [Math.acos((d * d + r * r - s * s) / (2 * d * r)), Math.acos((d * d + s * s - r * r) / (2 * d * s))];
  return r * r * (a - Math.sin(2 * a) / 2) + s * s * (b - Math.sin(2 * b) / 2);
}

/** A starter body Ø96 beside a boss Ø34, 62.5 between their middles, 28 deep, a drilling Ø8 in the boss. */
const starter: JobSpec = {
  clearance: 1.5,
  fixed: castingOf({
    material: { name: 'grey-iron', densityGPerCm3: 7.2 },
    sections: [{ id: 'boss', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17)] }],
    hollows: [{ id: 'drilling', depth: [0, 28], loops: [disc(62.5, 0, 4)], keepWallMm: 5, traceErrorMm: 0.5 }],
  }),
  moving: castingOf({ sections: [{ id: 'body', depth: [-60, 0], loops: [disc(0, 0, 48)], traceErrorMm: 0.5 }] }),
};

describe('a starter body over a casting boss', () => {
  const answer = plan(starter);
  const band = onlyBand(answer);

  it('takes off the lens of the body grown by the clearance', () => {
    expect(band.areaMm2).toBeCloseTo(lensMm2(62.5, 49.5, 17), 2);
    expect(band.areaMm2).toBeCloseTo(52.53, 2);
    expect(band.takeOffMm).toBeCloseTo(4, 4);
    // of the arcs that hold what was proved, 3e-4 wider at most all round
    expect(areaOf(band.loops)).toBeGreaterThan(band.areaMm2);
    expect(areaOf(band.loops)).toBeLessThan(band.areaMm2 + 3e-4 * 60);
  });

  it('draws first and last line from the error of the body alone', () => {
    expect(areaOf(band.firstLoops)).toBeCloseTo(lensMm2(62.5, 48 - 0.5 + 1.5, 17), 1);
    expect(areaOf(band.lastLoops)).toBeCloseTo(lensMm2(62.5, 48 + 0.5 + 1.5, 17), 1);
  });

  it('weighs what comes off', () => {
    expect(answer.volumeMm3).toBeCloseTo(band.areaMm2 * 28, 3);
    expect(answer.massG).toBeCloseTo((band.areaMm2 * 28 * 7.2) / 1000, 4);
  });

  it('leaves 9 mm to the drilling, 7.5 with every error taken off', () => {
    expect(answer.walls).toHaveLength(1);
    expect(answer.walls[0]?.nominalMm).toBeCloseTo(9, 3);
    // last line 0.5 farther, hand 0.5, drilling 0.5
    expect(answer.walls[0]?.wallMm).toBeCloseTo(7.5, 3);
    expect(answer.walls[0]?.holds).toBe(true);
  });

  it('holds, and what is left keeps the clearance', () => {
    expect(answer.holds).toBe(true);
    expect(answer.afterCut.home.clearanceMm).toBeGreaterThan(1.5 - 1e-6);
    expect(answer.afterCut.home.clearanceMm).toBeLessThan(1.5 + answer.boundMm);
    expect(answer.boundMm).toBeLessThan(0.001);
  });

  it('is an answer of its format', () => {
    expect(grindAnswerSchema.parse(answer)).toEqual(answer);
  });
});

/** A flange in the way of a lip that slides past at a stand-off of 14, turns, and goes home. */
const swing: JobSpec = {
  offerUp: [{ standOff: 60, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14 }, {}],
  fixed: castingOf({ sections: [{ id: 'ribs', depth: [12, 90], mayCut: true, loops: [ringPiece(150, 180, 8, 12)] }] }),
  moving: castingOf({ sections: [{ id: 'lip', depth: [-44, -30], loops: [ringPiece(177, 200, -6, 0)] }] }),
};

describe('bands of depth', () => {
  it('are cut only where the section passes, lengthened by the margin', () => {
    // at stand-off 14 the lip reaches from face 16 to 30, 2 more at either end
    expect(onlyBand(plan(swing)).depth).toEqual([14, 32]);
  });

  it('of a wider margin are longer', () => {
    expect(onlyBand(plan({ ...swing, depthMarginMm: 1 })).depth).toEqual([15, 31]);
  });

  it('are one where a leg only closes the stand-off over ground already covered', () => {
    const spec: JobSpec = {
      ...swing,
      offerUp: [{ standOff: 120, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14, turn: 10 }, { turn: 10 }, {}],
    };
    const depths = plan(spec).sections.flatMap(({ bands }) => bands.map(({ depth }) => depth));
    // the turn at home passes from face 30 to 44, the one at 14 from 16 to 30, the drop between from 16 to 44
    expect(depths.map((depth) => depth?.[0])).toContain(14);
    expect(depths.at(-1)?.[1]).toBe(46);
  });

  it('of a leg that turns and closes at once take the union over their depths', () => {
    const spec: JobSpec = { ...swing, offerUp: [{ standOff: 60, turn: 20 }, {}] };
    const answer = plan(spec);
    expect(answer.holds).toBe(true);
    expect(answer.afterCut.install?.clearanceMm).toBeGreaterThan(2 - 1e-3);
  });

  it('without depth are the whole section, of no known volume', () => {
    const flat: JobSpec = {
      ...starter,
      fixed: castingOf({ sections: [{ id: 'boss', depth: null, mayCut: true, loops: [disc(62.5, 0, 17)] }] }),
    };
    const answer = plan(flat);
    expect(onlyBand(answer).depth).toBeNull();
    expect([answer.volumeMm3, answer.massG]).toEqual([null, null]);
  });
});

describe('what needs no cut', () => {
  it('is not cut: a job that keeps its clearance has an empty plan that holds', () => {
    const answer = plan({
      ...starter,
      moving: castingOf({ sections: [{ depth: [-60, 0], loops: [disc(0, 0, 44)] }] }),
    });
    expect(answer).toMatchObject({ holds: true, sections: [], volumeMm3: 0, walls: [], uncured: [], severed: [] });
  });

  it('is not shaved where the clearance is just kept', () => {
    // a second boss stands at exactly 1.5
    const answer = plan({
      ...starter,
      fixed: castingOf({
        sections: [{ id: 'bosses', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17), disc(0, 59.5, 10)] }],
      }),
    });
    expect(onlyBand(answer).loops).toHaveLength(1);
    expect(answer.holds).toBe(true);
  });
});

describe('where no clearance is asked', () => {
  const asked = (clearance: number, radius: number): GrindAnswer =>
    plan({
      ...starter,
      clearance,
      moving: castingOf({ sections: [{ depth: [-60, 0], loops: [disc(0, 0, radius)] }] }),
    });

  it('a foul is cut to a hair clear, shallow ones too', () => {
    for (const [clearance, radius] of [
      [0, 48],
      [0, 45.5005],
      [0.0005, 45.5005],
    ] as const) {
      const answer = asked(clearance, radius);
      expect(onlyBand(answer).takeOffMm).toBeCloseTo(radius - 45.5 + clearance, 3);
      expect(answer.afterCut.home.state).toBe('clear');
      expect(answer.holds).toBe(true);
    }
  });

  it('a touch is left', () => {
    expect(asked(0, 45.5)).toMatchObject({ sections: [], holds: true });
  });
});

describe('rotating parts', () => {
  it('that run too near are no matter of this cut, and the plan does not hold', () => {
    const answer = plan({
      ...starter,
      rotating: [castingOf({ name: 'flywheel', sections: [{ depth: [0, 20], loops: [disc(0, 0, 43)] }] })],
    });
    expect(answer.holds).toBe(false);
    expect(answer.uncured).toMatchObject([{ section: 'flywheel', why: 'rotating' }]);
  });
});

describe('what may not be cut', () => {
  const boss = { id: 'boss', depth: [0, 28] as const, loops: [disc(62.5, 0, 17)] };

  it('is named where a section is not offered', () => {
    const answer = plan({ ...starter, fixed: castingOf({ sections: [boss] }) });
    expect(answer.sections).toEqual([]);
    expect(answer.holds).toBe(false);
    expect(answer.uncured).toHaveLength(1);
    expect(answer.uncured[0]).toMatchObject({ section: 'boss', why: 'not-offered', doNotCut: null });
    expect(answer.uncured[0]?.areaMm2).toBeCloseTo(52.53, 2);
  });

  it('stays out of the loops, and splits the band where it ends', () => {
    const ear = box(48.5, -3, 60, 3);
    const answer = plan({
      ...starter,
      fixed: castingOf({
        sections: [{ ...boss, mayCut: true }],
        doNotCut: [{ id: 'ear', depth: [20, 40], loops: [ear] }],
      }),
    });
    const bands = answer.sections[0]?.bands ?? [];
    expect(bands.map(({ depth }) => depth)).toEqual([
      [0, 20],
      [20, 28],
    ]);
    for (const { loops, lastLoops } of bands.slice(1)) {
      expect(regionOverlapAreaMm2(regionOf(loops), [ear])).toBeLessThan(1e-4);
      expect(regionOverlapAreaMm2(regionOf(lastLoops), [ear])).toBeLessThan(1e-4);
    }
    expect(answer.holds).toBe(false);
    expect(answer.uncured).toMatchObject([{ section: 'boss', why: 'do-not-cut', doNotCut: 'ear' }]);
    expect(answer.afterCut.home.clearanceMm).toBeCloseTo(0.5, 3);
  });

  it('bars nothing where the cut does not go', () => {
    const answer = plan({
      ...starter,
      fixed: castingOf({
        sections: [{ ...boss, mayCut: true }],
        doNotCut: [
          { id: 'beside', loops: [box(60, 10, 70, 15)] },
          { id: 'deeper', depth: [28, 40], loops: [disc(50, 0, 5)] },
        ],
      }),
    });
    expect(answer.holds).toBe(true);
    expect(onlyBand(answer).depth).toEqual([0, 28]);
  });
});

describe('a plan does not hold', () => {
  /** A bar 10 wide that something 4 wide crosses. */
  const crossed = (depth: [number, number], crossing: [number, number]): JobSpec => ({
    clearance: 1,
    depthMarginMm: 0,
    fixed: castingOf({ sections: [{ id: 'bar', depth, mayCut: true, loops: [box(0, 0, 60, 10)] }] }),
    moving: castingOf({ sections: [{ id: 'key', depth: crossing, loops: [box(38, -5, 42, 15)] }] }),
  });

  it('where it would part a piece', () => {
    const answer = plan(crossed([0, 10], [-10, 0]));
    expect(answer.severed).toHaveLength(1);
    expect(answer.severed[0]?.section).toBe('bar');
    // 60 − 43 of the bar lies beyond the slot of 4 + 2 × 1
    expect(answer.severed[0]?.areaMm2).toBeCloseTo(170, 1);
    expect(answer.severed[0]?.at[0]).toBeGreaterThan(43);
    expect(answer.holds).toBe(false);
  });

  it('but parts none where the bar runs on beneath the slot', () => {
    const answer = plan(crossed([0, 20], [-10, 0]));
    expect(answer.severed).toEqual([]);
    expect(answer.holds).toBe(true);
  });

  it('where a section has nothing left', () => {
    const answer = plan({
      fixed: castingOf({ sections: [{ id: 'pip', depth: [0, 10], mayCut: true, loops: [disc(0, 0, 3)] }] }),
      moving: castingOf({ sections: [{ depth: [-10, 0], loops: [disc(0, 0, 20)] }] }),
    });
    expect(onlyBand(answer).takeOffMm).toBeNull();
    expect(answer.holds).toBe(false);
  });

  it('where a wall would be too thin, or not be there', () => {
    const withHollow = (keepWallMm: number | null, radius: number): GrindAnswer =>
      plan({
        ...starter,
        fixed: castingOf({
          sections: [{ id: 'boss', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17)] }],
          hollows: [{ id: 'gallery', depth: [0, 28], loops: [disc(62.5, 0, radius)], keepWallMm, traceErrorMm: 0.5 }],
        }),
      });
    expect(withHollow(8, 4)).toMatchObject({ holds: false, walls: [{ keepMm: 8, holds: false }] });
    expect(withHollow(null, 4)).toMatchObject({ holds: true, walls: [{ keepMm: null, holds: null }] });
    expect(withHollow(null, 13)).toMatchObject({ holds: false, walls: [{ keepMm: null, holds: false }] });
  });

  it('where the least wall of the fit is more than is left', () => {
    expect(plan({ ...starter, minWallMm: 7.6 }).walls).toMatchObject([{ keepMm: 7.6, holds: false }]);
  });
});

describe('walls are distances in space', () => {
  it('from the last line and its depths to the hollow and its own', () => {
    const answer = plan({
      ...starter,
      fixed: castingOf({
        sections: [{ id: 'boss', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17)] }],
        hollows: [{ id: 'beneath', depth: [34, 60], loops: [disc(62.5, 0, 4)], traceErrorMm: 0.2 }],
      }),
      cutter: { radiusMm: 6, nose: 'ball', handErrorMm: 0.3, runOut: 'cut-past', stepoverMm: null },
    });
    // in the plane 8.5 from the last line, 6 deeper
    expect(answer.walls[0]?.wallMm).toBeCloseTo(Math.hypot(8.5, 6) - 0.2 - 0.3, 3);
    expect(answer.walls[0]?.nominalMm).toBeCloseTo(Math.hypot(9, 6), 3);
  });
});

describe('a cut of the moving part', () => {
  const movingCut: JobSpec = {
    ...starter,
    cut: 'moving',
    fixed: castingOf({ sections: [{ id: 'boss', depth: [0, 28], loops: [disc(62.5, 0, 17)], traceErrorMm: 0.4 }] }),
    moving: castingOf({
      sections: [{ id: 'body', depth: [-60, 0], mayCut: true, loops: [disc(0, 0, 48)], traceErrorMm: 0.5 }],
    }),
  };

  it('takes the same lens the other way about, and the margin in depth', () => {
    const answer = plan(movingCut);
    expect(answer.part).toBe('moving');
    const band = onlyBand(answer);
    expect(band.areaMm2).toBeCloseTo(lensMm2(62.5, 48, 18.5), 2);
    expect(band.depth).toEqual([-29.5, 0]);
    expect(areaOf(band.lastLoops)).toBeCloseTo(lensMm2(62.5, 48, 18.9), 1);
    expect(answer.holds).toBe(true);
    expect(answer.afterCut.home.clearanceMm).toBeGreaterThan(1.5 - 1e-6);
  });

  it('sees the way in from its own side', () => {
    const answer = plan({
      ...swing,
      cut: 'moving',
      fixed: castingOf({ sections: [{ id: 'ribs', depth: [12, 90], loops: [ringPiece(150, 180, 8, 12)] }] }),
      moving: castingOf({
        sections: [{ id: 'lip', depth: [-44, -30], mayCut: true, loops: [ringPiece(177, 200, -6, 0)] }],
      }),
    });
    const band = onlyBand(answer);
    // all of the lip within 182 of the axis goes: 6° of a ring 177–182
    expect(band.areaMm2).toBeCloseTo(((182 ** 2 - 177 ** 2) / 2) * ((6 * Math.PI) / 180), 1);
    expect(answer.holds).toBe(true);
    expect(answer.afterCut.install?.clearanceMm).toBeCloseTo(2, 3);
  });
});

/** Places to 1e-6 mm, bulges to 1e-9. */
const onGrid = (vertex: unknown): unknown =>
  (vertex as readonly number[]).map((x, i) => Math.round(x * (i < 2 ? 1e6 : 1e9)) / (i < 2 ? 1e6 : 1e9));

/** How much of one line's metal lies outside another's. */
const beyondMm2 = (inner: BandAnswer['loops'], outer: BandAnswer['loops']): number =>
  areaMm2(difference(polygonise(regionOf(inner), 1e-6, 'inside'), polygonise(regionOf(outer), 1e-6, 'outside')));

describe('loops of an answer', () => {
  it('are sound outlines to 1e-6, first within planned within last', () => {
    for (const answer of [plan(starter), plan(swing)]) {
      for (const band of answer.sections.flatMap(({ bands }) => bands)) {
        for (const loops of [band.loops, band.firstLoops, band.lastLoops]) {
          expect(loopFaults(regionOf(loops))).toEqual([]);
          for (const vertex of loops.flat()) expect(vertex).toEqual(onGrid(vertex));
        }
        const [first, planned, last] = [areaOf(band.firstLoops), areaOf(band.loops), areaOf(band.lastLoops)];
        expect(first).toBeLessThan(planned);
        expect(planned).toBeLessThan(last);
        expect(beyondMm2(band.firstLoops, band.loops)).toBeLessThan(1e-4);
        // where the two run on one another, the arcs of either are within 3e-4 of the same polygon
        expect(beyondMm2(band.loops, band.lastLoops)).toBeLessThan(3e-4 * 60);
      }
    }
  });
});
