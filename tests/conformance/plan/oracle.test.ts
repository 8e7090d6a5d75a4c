import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { GrindAnswer } from '../../../src/answers/grind-answer.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { box, castingOf, disc, holeOf, type JobSpec, tapped } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import type { Complaint } from '../../support/oracles/complaint.ts';
import { CutterBody, type Tool } from '../../support/oracles/cutter-body.ts';
import { GeosPlane, type Shape } from '../../support/oracles/geos-plane.ts';
import { judgePlan } from '../../support/oracles/judge-plan.ts';
import { type Cuts, layersOf } from '../../support/oracles/layered-solid.ts';
import { answerTo } from '../../support/plan-answer.ts';

/**
 * Source of all figures here: closed forms. A ball of radius r on a floor, against nothing else, leaves beside a wall that
 * it may not touch, or at the floor's corner with what is behind, metal of r − √(r² − (r − s)²) at a height s above the
 * floor, and none from s = r on. Tolerance: what the oracle says of its own fillets, 0.02 mm here.
 */
let geos: GeosPlane;
beforeAll(async () => {
  geos = await GeosPlane.start();
});
afterEach(() => geos.free());

type Band = Cuts[0]['bands'][0];
type Rectangle = readonly [x0: number, y0: number, x1: number, y1: number];

const bandOf = (depth: readonly [number, number], [x0, y0, x1, y1]: Rectangle): Band => {
  const loops: Band['loops'] = [
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
  ];
  return {
    depth: [...depth],
    lastDepth: [...depth],
    areaMm2: 0,
    takeOffMm: 0,
    loops,
    firstLoops: loops,
    lastLoops: loops,
    neededAreaMm2: 0,
    extraAreaMm2: 0,
    cutterWay: null,
    straightExtraAreaMm2: null,
  };
};

const extentOf = (shape: Shape): readonly [width: number, height: number] => {
  const at = geos.bounds(shape);
  return at === null ? [0, 0] : [at.x1 - at.x0, at.y1 - at.y0];
};

const ball: Tool = { radiusMm: 6, nose: 'ball' };
const flat: Tool = { radiusMm: 6, nose: 'flat' };
const profile = (s: number): number => (s >= 6 ? 0 : 6 - Math.sqrt(36 - (6 - s) ** 2));

// a bar along x, 40 wide, y from 0 up to 20, whose top 10 mm go from depth 0 to 30; below depth 30 it stays
const bar = castingOf({ sections: [{ id: 'bar', depth: [0, 60], mayCut: true, loops: [box(0, 0, 40, 20)] }] });
const step: Cuts = [{ id: 'bar', nothingLeft: false, bands: [bandOf([0, 30], [0, 10, 40, 20])] }];

describe('what a cutter leaves', () => {
  it.each([0.01, 0.5, 1, 2, 4, 5.5, 6.5])('a ball %f mm above a floor: the profile of its own roundness', (s) => {
    const body = new CutterBody(geos, layersOf(geos, bar, step), ball);
    // in plan the wall is the line y = 10, and the fillet lies along it
    const [width, height] = extentOf(body.leftAt(30 - s));
    expect(Math.abs(height - profile(s))).toBeLessThan(0.02);
    expect(height).toBeLessThanOrEqual(profile(s) + 1e-3);
    // at the bar's open ends it is told a few hundredths too short
    if (s < 5.5) expect(Math.abs(width - 40)).toBeLessThan(0.1);
  });

  it('a flat leaves nothing along a straight wall', () => {
    const body = new CutterBody(geos, layersOf(geos, bar, step), flat);
    for (const depth of [0.5, 15, 29.99]) expect(geos.areaMm2(body.leftAtMost(depth))).toBe(0);
  });

  it('nothing is left of a section that goes whole and stands in free air', () => {
    const whole: Cuts = [{ id: 'bar', nothingLeft: false, bands: [bandOf([0, 60], [0, 0, 40, 20])] }];
    const body = new CutterBody(geos, layersOf(geos, bar, whole), ball);
    for (const depth of [0.01, 30, 59.99]) expect(geos.areaMm2(body.leftAtMost(depth))).toBe(0);
  });

  it('a wall alone, cut all along its depth, leaves a ball no fillet', () => {
    const through: Cuts = [{ id: 'bar', nothingLeft: false, bands: [bandOf([0, 60], [0, 10, 40, 20])] }];
    const body = new CutterBody(geos, layersOf(geos, bar, through), ball);
    for (const depth of [0.01, 30, 59.99]) expect(geos.areaMm2(body.leftAtMost(depth))).toBe(0);
  });

  it('a square corner of walls keeps (1 − π/4) r² of metal, by a flat at every depth and by a ball above its floor', () => {
    const notch: Cuts = [{ id: 'bar', nothingLeft: false, bands: [bandOf([0, 30], [20, 10, 40, 20])] }];
    const corner = (1 - Math.PI / 4) * 36;
    const layers = layersOf(geos, bar, notch);
    for (const tool of [ball, flat]) {
      expect(Math.abs(geos.areaMm2(new CutterBody(geos, layers, tool).leftAt(15)) - corner)).toBeLessThan(0.1);
    }
    expect(Math.abs(geos.areaMm2(new CutterBody(geos, layers, flat).leftAt(29.9)) - corner)).toBeLessThan(0.1);
  });

  it('a slot narrower than the cutter stays', () => {
    const slot: Cuts = [{ id: 'bar', nothingLeft: false, bands: [bandOf([0, 60], [15, 0, 25, 20])] }];
    const body = new CutterBody(geos, layersOf(geos, bar, slot), flat);
    // the flat dips into a slot of 10 from each open end by no more than 6 − √(36 − 25)
    expect(
      Math.abs(geos.areaMm2(geos.intersection(body.leftAt(30), geos.box({ x0: 15, y0: 3, x1: 25, y1: 17 }))) - 140),
    ).toBeLessThan(0.1);
  });

  it('a plug behind a plate is a floor that a ball must not go into', () => {
    // a plate 10 thick with a window cut through it, the lower half of the window closed by metal behind
    const plate = castingOf({
      sections: [
        { id: 'plate', depth: [0, 10], mayCut: true, loops: [box(-40, -40, 40, 40)] },
        { id: 'plug', depth: [10, 30], loops: [box(-40, -40, 40, 0)] },
      ],
    });
    const body = new CutterBody(
      geos,
      layersOf(geos, plate, [{ id: 'plate', nothingLeft: false, bands: [bandOf([0, 10], [-20, -20, 20, 20])] }]),
      ball,
    );
    const middleOfSide = (y0: number, y1: number): Shape => geos.box({ x0: -5, y0, x1: 5, y1 });
    const [, floored] = extentOf(geos.intersection(body.leftAt(9), middleOfSide(-20, -10)));
    expect(Math.abs(floored - profile(1))).toBeLessThan(0.02);
    expect(geos.areaMm2(geos.intersection(body.leftAt(9), middleOfSide(10, 20)))).toBeLessThan(1e-3);
  });

  it('metal that another section shares stays', () => {
    const shared = castingOf({
      sections: [
        { id: 'bar', depth: [0, 60], mayCut: true, loops: [box(0, 0, 40, 20)] },
        { id: 'pad', depth: [20, 40], mayCut: true, loops: [box(10, 0, 20, 20)] },
      ],
    });
    const [before, within, , after] = layersOf(geos, shared, step);
    expect(geos.areaMm2(before?.planned as Shape)).toBeCloseTo(400, 0);
    expect(geos.areaMm2(within?.planned as Shape)).toBeCloseTo(300, 0);
    expect(geos.areaMm2(after?.planned as Shape)).toBe(0);
  });
});

/** An answer that takes what it is told to, whatever would be needed. */
const answerOf = (joint: Joint, sections: Cuts): GrindAnswer => ({ ...answerTo(joint), sections });

const kinds = (joint: Joint, cuts: Cuts): string[] =>
  judgePlan(geos, joint, answerOf(joint, cuts))
    .map(({ what }: Complaint) => what)
    .sort();

const ball6 = { radiusMm: 6, nose: 'ball', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null } as const;

/** The bar, 2 mm asked of a skirt that lies 2 mm over it once 3 mm are off, along depths 0 to 20. */
const barJob = (spec: JobSpec = {}, block: Parameters<typeof castingOf>[0] = {}): Joint =>
  jointOf({
    depthMarginMm: 1,
    fixed: castingOf({ sections: [{ id: 'bar', depth: [5, 60], mayCut: true, loops: [box(0, 0, 40, 20)] }], ...block }),
    moving: castingOf({ sections: [{ id: 'skirt', depth: [-20, 0], loops: [box(-10, 19, 50, 30)] }] }),
    ...spec,
  });

const takeOff = (depth: readonly [number, number], y = 17): Cuts => [
  { id: 'bar', nothingLeft: false, bands: [bandOf(depth, [-1, y, 41, 21])] },
];

describe('judging a plan', () => {
  it('has nothing against one that keeps everything, and complains of less depth or less metal off', () => {
    expect(kinds(barJob(), takeOff([5, 21]))).toEqual([]);
    expect(kinds(barJob(), takeOff([5, 20.5]))).toEqual(['home']);
    expect(kinds(barJob(), takeOff([5, 21], 17.1))).toEqual(['home']);
  });

  it('sees the fillet of a ball in the way, and none where the cut goes its radius past', () => {
    const joint = barJob({ cutter: ball6 });
    expect(kinds(joint, takeOff([5, 21]))).toEqual(['home']);
    expect(kinds(joint, takeOff([5, 27]))).toEqual([]);
  });

  it('measures the way in', () => {
    const way = barJob({ offerUp: [{ standOff: 90, shift: [0, 0] }, { standOff: 0, shift: [0, -3] }, {}] });
    expect(kinds(way, takeOff([5, 21]))).toEqual(['way-in']);
  });

  it('moves neither of two ends at their own faces, and either of them against another', () => {
    const flange = castingOf({ sections: [{ id: 'flange', depth: [0, 10], loops: [box(0, 0, 40, 20)] }] });
    const over = (depth: [number, number]) =>
      castingOf({ sections: [{ id: 'other', depth, loops: [box(0, 0, 40, 20)] }] });
    expect(kinds(jointOf({ fixed: over([0, 10]), moving: flange, depthMarginMm: 1 }), [])).toEqual([]);
    expect(kinds(jointOf({ fixed: over([0.5, 10]), moving: flange, depthMarginMm: 1 }), [])).toEqual(['home']);
    expect(kinds(jointOf({ fixed: over([1.5, 10]), moving: flange, depthMarginMm: 1 }), [])).toEqual([]);
  });

  it('guards metal that was not offered, regions, holes and hollows', () => {
    const cuts = takeOff([5, 21]);
    const block = (more: Parameters<typeof castingOf>[0]) => kinds(barJob({}, more), cuts);
    const sections = [{ id: 'bar', depth: [5, 60], mayCut: true, loops: [box(0, 0, 40, 20)] }] as const;
    const pad = (depth: [number, number]) => ({ id: 'pad', depth, loops: [box(10, 0, 20, 17.5)] });
    expect(block({ sections: [...sections, pad([10, 15])] })).toEqual(['home', 'not-offered']);
    expect(block({ sections: [...sections, pad([25, 30])] })).toEqual([]);
    expect(block({ doNotCut: [{ loops: [box(0, 10, 10, 18)], depth: [20, 30] }] })).toEqual(['do-not-cut']);
    expect(block({ doNotCut: [{ loops: [box(0, 10, 10, 18)], depth: [21, 30] }] })).toEqual([]);
    // M12 with its centre 9 mm below the cut: 3 mm of the half diameter, 6 mm, that is kept unasked
    expect(block({ holes: [tapped('T', [20, 8])] })).toEqual(['near-hole']);
    expect(block({ holes: [tapped('T', [20, 4.9])] })).toEqual([]);
    expect(block({ holes: [tapped('T', [20, 12])] })).toEqual(['in-hole']);
    expect(block({ holes: [holeOf({ id: 'T', at: [20, 12], diameterMm: 12, mayBreak: true })] })).toEqual([]);
    // 3 mm off in plan and 4 mm along the crank are 5 mm
    const far = (keepWallMm: number) => holeOf({ id: 'T', at: [20, 8], diameterMm: 12, depth: [25, 40], keepWallMm });
    expect(block({ holes: [far(4.95)] })).toEqual([]);
    expect(block({ holes: [far(5.05)] })).toEqual(['near-hole']);
    expect(block({ hollows: [{ loops: [disc(20, 12, 6)] }] })).toEqual(['in-hollow']);
    expect(block({ hollows: [{ loops: [disc(20, 8, 6)], keepWallMm: 3.1 }] })).toEqual(['near-hollow']);
    expect(block({ hollows: [{ loops: [disc(20, 8, 6)], keepWallMm: 2.9 }] })).toEqual([]);
  });

  it('sees floors and webs thinner than the least wall', () => {
    const thin = (minWallMm: number, cuts: Cuts, to = 24) =>
      kinds(
        barJob({ minWallMm }, { sections: [{ id: 'bar', depth: [5, to], mayCut: true, loops: [box(0, 0, 40, 20)] }] }),
        cuts,
      );
    // 3 mm are left between depth 21 and the bar's end at 24
    expect(thin(3.1, takeOff([5, 21]))).toEqual(['thin-floor']);
    expect(thin(2.9, takeOff([5, 21]))).toEqual([]);
    // 17 mm are left beside the cut
    expect(thin(17.1, takeOff([5, 60]), 60)).toEqual(['thin-web']);
    expect(thin(16.9, takeOff([5, 60]), 60)).toEqual([]);
  });
});
