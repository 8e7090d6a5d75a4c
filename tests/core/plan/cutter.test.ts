import { describe, expect, it } from 'vitest';
import type { BandAnswer, GrindAnswer } from '../../../src/answers/grind-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { type Loop, moveLoop } from '../../../src/geometry/plane/loop.ts';
import { rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { difference } from '../../../src/geometry/polygons/polygon-engine.ts';
import { drain, showing } from '../../../src/geometry/progress.ts';
import type { Cutter } from '../../../src/job/job.ts';
import { type CutPiece, cornerLeftMm, filletReachMm, scallopMm, slicesOf } from '../../../src/plan/bands/run-out.ts';
import { type CutterShape, shapeForCutter } from '../../../src/plan/cutter/cutter-shape.ts';
import { box, castingOf, disc, type JobSpec, ringPiece } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo } from '../../support/plan-answer.ts';

const plan = (spec: JobSpec): GrindAnswer => answerTo(jointOf(spec));

const onlyBand = (answer: GrindAnswer): BandAnswer => {
  expect(answer.sections.map(({ bands }) => bands.length)).toEqual([1]);
  return answer.sections[0]?.bands[0] as BandAnswer;
};

const cutterOf = (said: Partial<Cutter> = {}): Cutter => ({
  radiusMm: 6,
  nose: 'flat',
  handErrorMm: 0.5,
  runOut: 'cut-past',
  stepoverMm: null,
  ...said,
});

/** A square-cornered key let into the edge of a plate, a finger's breadth clear of it. */
const keyed: JobSpec = {
  clearance: 0.5,
  fixed: castingOf({
    material: { name: 'grey-iron', densityGPerCm3: 7.2 },
    sections: [{ id: 'plate', depth: [0, 20], mayCut: true, loops: [box(0, 0, 60, 40)] }],
  }),
  moving: castingOf({ sections: [{ id: 'key', depth: [-20, 0], loops: [box(20, 30, 40, 60)] }] }),
  cutter: cutterOf(),
};

describe('a cut right across the end of a rib narrower than the cutter', () => {
  it.each([0, 10, 33, 71])(
    'is taken as it is needed, the rib turned by %d°: the cutter comes from all sides',
    (deg) => {
      const turned = (loop: Loop): Loop => moveLoop(loop, rigid((deg * Math.PI) / 180, vec(0, 0)));
      const answer = plan({
        clearance: 1,
        fixed: castingOf({ sections: [{ depth: [0, 20], mayCut: true, loops: [turned(box(0, 0, 60, 8))] }] }),
        moving: castingOf({ sections: [{ depth: [-20, 0], loops: [turned(box(55, -30, 90, 30))] }] }),
        cutter: cutterOf(),
      });
      const band = onlyBand(answer);
      expect(band.cutterWay).toBe('as-needed');
      expect(band.areaMm2).toBeCloseTo(6 * 8, 2);
      expect(answer.warnings.map(({ code }) => code)).not.toContain('cutter-cannot-enter');
    },
  );
});

describe('closed forms', () => {
  it.each([
    [90, 3, 1.243],
    [90, 5, 2.071],
    [90, 8, 3.314],
    [120, 5, 0.774],
  ])('a corner of %d° and a cutter of radius %d leave %d of metal in it: r(1/sin ½θ − 1)', (deg, radius, left) => {
    expect(cornerLeftMm(radius, (deg * Math.PI) / 180)).toBeCloseTo(left, 3);
  });

  it.each([
    [5, 2, 0.101],
    [6, 2, 0.084],
    [10, 3, 0.113],
  ])('a ball of radius %d stepped over %d leaves ridges of %d: R − √(R² − s²/4)', (radius, stepover, height) => {
    expect(scallopMm(radius, stepover)).toBeCloseTo(height, 3);
  });

  it('passes that part leave ridges as high as the ball', () => {
    expect(scallopMm(5, 12)).toBe(5);
  });

  it.each([
    [5, 2, 8],
    [8, 3, 12.49],
  ])('a ball of radius %d sunk %d cuts a groove %d wide: 2√(2Rh − h²)', (radius, deep, width) => {
    expect(2 * filletReachMm(radius, deep)).toBeCloseTo(width, 3);
  });
});

describe('corners', () => {
  const bare = onlyBand(plan({ ...keyed, cutter: null }));

  it('are left as the clearance makes them without a cutter', () => {
    expect(bare).toMatchObject({ cutterWay: null, extraAreaMm2: 0 });
    expect(bare.neededAreaMm2).toBeCloseTo(bare.areaMm2, 4);
    expect(plan({ ...keyed, cutter: null })).toMatchObject({ cutter: null, smallestFilletMm: null });
  });

  it('that the cutter does not get into are let in, which is lighter than growing the cut', () => {
    const answer = plan(keyed);
    const band = onlyBand(answer);
    expect(band.cutterWay).toBe('corners');
    expect(band.neededAreaMm2).toBeCloseTo(bare.areaMm2, 3);
    // a disc laid through a square corner takes a segment of a quarter turn from either wall; the 0.5 round spares a little
    const segments = 4 * 36 * (Math.PI / 4 - 1 / 2);
    expect(band.extraAreaMm2).toBeGreaterThan(0.85 * segments);
    expect(band.extraAreaMm2).toBeLessThan(segments);
    expect(answer.smallestFilletMm).toBe(6);
    expect(answer.holds).toBe(true);
    expect(grindAnswerSchema.parse(answer)).toEqual(answer);
  });

  it('state the metal they cost', () => {
    const { cutter, volumeMm3, sections } = plan(keyed);
    const extra = sections[0]?.bands[0]?.extraAreaMm2 as number;
    expect(cutter?.extraVolumeMm3).toBeCloseTo(extra * 20, 2);
    expect(cutter?.neededVolumeMm3).toBeCloseTo((volumeMm3 as number) - extra * 20, 2);
    expect(cutter?.extraMassG).toBeCloseTo((extra * 20 * 7.2) / 1000, 4);
  });

  it('rounder than the cutter cost nothing', () => {
    const band = onlyBand(plan({ ...keyed, clearance: 6.1 }));
    expect(band).toMatchObject({ cutterWay: 'as-needed' });
    expect(band.extraAreaMm2).toBeLessThan(0.01);
  });

  it('that would be let into what must not be cut are refused', () => {
    const answer = plan({
      ...keyed,
      fixed: castingOf({
        sections: [{ id: 'plate', depth: [0, 20], mayCut: true, loops: [box(0, 0, 60, 40)] }],
        doNotCut: [{ id: 'seat', loops: [disc(18.5, 33.5, 0.4)] }],
      }),
    });
    expect(answer.holds).toBe(false);
    expect(answer.uncured).toMatchObject([{ why: 'do-not-cut', doNotCut: 'seat' }]);
  });
});

describe('of two ways to make a cut', () => {
  const square = [
    [0, 0],
    [20, 0],
    [20, 20],
    [0, 20],
  ].map(([x = 0, y = 0]) => ({ x, y }));
  const notch = [
    [8, 16],
    [12, 16],
    [12, 20],
    [8, 20],
  ].map(([x = 0, y = 0]) => ({ x, y }));
  const grownBy = (mm: number) => [
    [
      { x: 8 - mm, y: 16 - mm },
      { x: 12 + mm, y: 16 - mm },
      { x: 12 + mm, y: 20 },
      { x: 8 - mm, y: 20 },
    ],
  ];
  const need = { metal: [square], needed: [notch], left: difference([square], [notch]), beside: [] };
  const shaped = (...asked: Parameters<typeof shapeForCutter>): CutterShape =>
    drain(showing({ step: 'the cutter', done: 0, of: 1 }, shapeForCutter(...asked)));
  const shape = (mm: number, bites = () => false) => shaped(need, () => grownBy(mm), 3, bites);

  it('the lighter is taken', () => {
    expect(shape(0.1).way).toBe('uniform');
    expect(shape(4).way).toBe('corners');
  });

  it('the heavier where only the lighter bites what must stay', () => {
    let asked = 0;
    expect(shape(4, () => asked++ === 0).way).toBe('uniform');
  });

  it('where a slot is narrower than the cutter, the way in is said to be barred', () => {
    // air within, reached by a slot 2 wide: metal round it stays
    const ring = [
      [
        { x: -20, y: -20 },
        { x: 20, y: -20 },
        { x: 20, y: 20 },
        { x: -20, y: 20 },
      ],
      [
        { x: -1, y: 0 },
        { x: -1, y: 10 },
        { x: 1, y: 10 },
        { x: 1, y: 0 },
      ],
    ];
    const cut = [
      [
        { x: -1, y: 10 },
        { x: 1, y: 10 },
        { x: 1, y: 11 },
        { x: -1, y: 11 },
      ],
    ];
    const need = { metal: ring, needed: cut, left: difference(ring, cut), beside: [] };
    const { narrow } = shaped(need, () => ring, 3, null);
    expect(narrow.length).toBeGreaterThan(0);
    expect(narrow[0]?.gapMm).toBeLessThan(6);
  });
});

describe('the ends of a ball-nosed cut', () => {
  const swing: JobSpec = {
    offerUp: [{ standOff: 60, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14 }, {}],
    fixed: castingOf({
      sections: [{ id: 'ribs', depth: [12, 90], mayCut: true, loops: [ringPiece(150, 180, 8, 12)] }],
    }),
    moving: castingOf({ sections: [{ id: 'lip', depth: [-44, -30], loops: [ringPiece(177, 200, -6, 0)] }] }),
  };
  const cut = (said: Partial<Cutter>): GrindAnswer => plan({ ...swing, cutter: cutterOf({ nose: 'ball', ...said }) });

  it('run past what is in the way by its radius, no farther than the section', () => {
    const answer = cut({});
    expect(onlyBand(answer).depth).toEqual([12, 38]);
    expect(answer.cutter?.ends).toMatchObject([
      { atMm: 12, what: 'run-past', mm: 6 },
      { atMm: 38, what: 'cut-past', mm: 6 },
    ]);
    // what the clearance needs reaches from 14 to 32 only
    const { neededAreaMm2, areaMm2 } = onlyBand(answer);
    expect(answer.cutter?.neededVolumeMm3).toBeCloseTo(neededAreaMm2 * 18, 2);
    expect(answer.volumeMm3).toBeCloseTo(areaMm2 * 26, 2);
    expect(answer.holds).toBe(true);
  });

  it('or leave a fillet standing, and then the plan does not hold', () => {
    const answer = cut({ runOut: 'leave' });
    const { depth, takeOffMm } = onlyBand(answer);
    expect(depth).toEqual([14, 32]);
    const heightMm = Math.min(6, takeOffMm as number);
    expect(answer.cutter?.ends.map(({ what }) => what)).toEqual(['left', 'left']);
    expect(answer.cutter?.ends[0]?.mm).toBeCloseTo(heightMm, 6);
    expect(answer.cutter?.ends[0]?.reachMm).toBeCloseTo(filletReachMm(6, takeOffMm as number), 6);
    expect(answer.warnings.map(({ code }) => code)).toContain('cutter-fillet-left');
    expect(answer.holds).toBe(false);
  });

  it('of a flat nose leave none', () => {
    const answer = cut({ nose: 'flat' });
    expect(onlyBand(answer).depth).toEqual([14, 32]);
    expect(answer.cutter?.ends).toEqual([]);
    expect(answer.holds).toBe(true);
  });

  it('of bands that cover one another when lengthened are cut to both', () => {
    const piece = (fromMm: number, toMm: number) => ({ depth: { fromMm, toMm } }) as CutPiece;
    const [a, b] = [piece(6, 24), piece(16, 32)];
    const slices = slicesOf([a, b]);
    const names = new Map([
      [a, 'a'],
      [b, 'b'],
    ]);
    expect(
      slices.map(({ depth, pieces }) => [depth?.fromMm, depth?.toMm, pieces.map((p) => names.get(p)).join('')]),
    ).toEqual([
      [6, 16, 'a'],
      [16, 24, 'ab'],
      [24, 32, 'b'],
    ]);
  });

  it('against another section leave a fillet in the corner', () => {
    const answer = plan({
      ...swing,
      fixed: castingOf({
        sections: [
          { id: 'flange', depth: [0, 12], loops: [ringPiece(150, 181, 8, 12)] },
          { id: 'ribs', depth: [12, 90], mayCut: true, loops: [ringPiece(150, 180, 8, 12)] },
        ],
      }),
      cutter: cutterOf({ nose: 'ball' }),
    });
    expect(answer.cutter?.ends[0]).toMatchObject({ atMm: 12, what: 'against', against: 'flange' });
    expect(answer.cutter?.covered).toMatchObject([{ section: 'ribs', by: 'flange' }]);
    expect(answer.warnings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['cutter-fillet-against', 'cutter-covered']),
    );
  });
});
