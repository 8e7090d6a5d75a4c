import { describe, expect, it } from 'vitest';
import { homeFoul as homeFoulOf, wayInFoul as wayInFoulOf } from '../../../src/clearance/foul.ts';
import { roomItSwingsThrough } from '../../../src/clearance/room.ts';
import { regionAreaMm2 } from '../../../src/geometry/polygons/region-measures.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { JobSpec } from '../../support/jobs.ts';
import { box, castingOf, disc, ringPiece } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

type JointOf = ReturnType<typeof jointOf>;
const homeFoul = (joint: JointOf) => drain(homeFoulOf(joint));
const wayInFoul = (joint: JointOf) => drain(wayInFoulOf(joint));

const deep: [number, number] = [0, 28];

/** A fixed and a moving part of one section each; the moving one stands proud of its face, so the two share depth. */
const pairOf = (fixed: ReturnType<typeof box>[], moving: ReturnType<typeof box>[], rest: JobSpec = {}) =>
  jointOf({
    fixed: castingOf({ sections: [{ id: 'boss', depth: deep, loops: fixed }] }),
    moving: castingOf({ sections: [{ id: 'body', depth: [-28, 0], loops: moving }] }),
    ...rest,
  });

/** Area two circles share, by circular segments. */
function lensMm2(d: number, r: number, s: number): number {
  const [a, b] = [Math.acos((d * d + r * r - s * s) / (2 * d * r)), Math.acos((d * d + s * s - r * r) / (2 * d * s))];
  return r * r * (a - Math.sin(2 * a) / 2) + s * s * (b - Math.sin(2 * b) / 2);
}

describe('the foul at home', () => {
  it('of two circles is their lens, as deep as they overlap', () => {
    const foul = homeFoul(pairOf([disc(62.5, 0, 17)], [disc(0, 0, 48)]));
    expect(foul.areaMm2).toBeCloseTo(lensMm2(62.5, 48, 17), 2);
    expect(foul.areaMm2).toBeCloseTo(26.07, 2);
    expect(foul.deepestMm).toBeCloseTo(2.5, 3);
    expect(foul.regions.map(({ section }) => section)).toEqual(['boss']);
  });

  it('is none where outlines only touch, straight or round', () => {
    for (const touching of [
      [box(0, 0, 10, 10), box(10, 2, 20, 8)],
      [disc(0, 0, 10), disc(17, 0, 7)],
      [disc(0, 0, 10), box(10, -3, 20, 3)],
    ] as const) {
      expect(homeFoul(pairOf([touching[0]], [touching[1]]))).toEqual({ areaMm2: 0, deepestMm: 0, regions: [] });
    }
  });

  it('of a long shallow graze is as deep as it is, and quick', () => {
    // half a ring R205.01 in a bore R205
    const foul = homeFoul(pairOf([disc(0, 0, 205), disc(0, 0, 230)], [ringPiece(150, 205.01, 0, 180)]));
    expect(foul.deepestMm).toBeCloseTo(0.01, 4);
    expect(foul.areaMm2).toBeCloseTo(((205.01 ** 2 - 205 ** 2) / 2) * Math.PI, 1);
  });

  it('has no depth where nothing of a section is left', () => {
    const foul = homeFoul(pairOf([disc(1, 0, 5)], [disc(0, 0, 20)]));
    expect(foul.deepestMm).toBeNull();
    expect(foul.areaMm2).toBeCloseTo(Math.PI * 25, 2);
  });

  it('through the middle of a plate is as deep as the nearest side, not as half its own width', () => {
    // a 2 wide slot across a 40 × 10 plate: 1 to the metal left, 5 to the outside from the middle of the cut
    const foul = homeFoul(pairOf([box(0, 0, 40, 10)], [box(19, -5, 21, 15)]));
    expect(foul.areaMm2).toBeCloseTo(20, 4);
    expect(foul.deepestMm).toBeCloseTo(5, 3);
  });

  it('in a pocket inside a plate is as deep as its farthest surface lies from the outside', () => {
    const foul = homeFoul(pairOf([box(0, 0, 40, 40)], [disc(20, 20, 6)]));
    // on the diagonal
    expect(foul.deepestMm).toBeCloseTo(20 - 6 * Math.SQRT1_2, 3);
  });

  it('is measured to metal however far off that is', () => {
    const wide = homeFoul(pairOf([box(0, 0, 400, 400)], [disc(200, 200, 6)]));
    expect(wide.deepestMm).toBeCloseTo(200 - 6 * Math.SQRT1_2, 3);
    // all of one boss goes; the other stands 290 from its far side
    const boss = homeFoul(pairOf([box(0, 0, 10, 10), box(300, 0, 310, 10)], [box(-5, -5, 15, 15)]));
    expect(boss.deepestMm).toBeCloseTo(300, 3);
  });

  it('that takes the end off a bar is as deep as the farthest metal removed', () => {
    // the cut surface is nowhere more than 5 from the outside; the end of the bar is 12 from what is left
    const foul = homeFoul(pairOf([box(0, 0, 40, 10)], [box(28, -5, 60, 15)]));
    expect(foul.deepestMm).toBeCloseTo(12, 3);
  });

  it('does not count sections that share no depth, nor mating faces', () => {
    const joint = jointOf({
      fixed: castingOf({ sections: [{ id: 'flange', depth: [0, 12], loops: [disc(0, 0, 30)] }] }),
      moving: castingOf({ sections: [{ id: 'flange', depth: [0, 14], loops: [disc(0, 0, 30)] }] }),
    });
    expect(homeFoul(joint).areaMm2).toBe(0);
  });

  it('reaches as far beyond a section as the depth margin', () => {
    const jointWith = (depthMarginMm: number) =>
      jointOf({
        depthMarginMm,
        fixed: castingOf({ sections: [{ id: 'rib', depth: [11, 20], loops: [box(0, 0, 10, 10)] }] }),
        moving: castingOf({ sections: [{ id: 'lip', depth: [-10, -5], loops: [box(8, 0, 20, 10)] }] }),
      });
    expect(homeFoul(jointWith(0.5)).areaMm2).toBe(0);
    expect(homeFoul(jointWith(1.5)).areaMm2).toBeCloseTo(20, 4);
  });
});

describe('the foul on the way in', () => {
  it('of a rib that turns through a wider boss is what its ring sector shares with it', () => {
    // rib R190–205 over 4° turned 15°: against a ring R180–220 over 60° it sweeps 982.402 mm² of it
    const joint = pairOf([ringPiece(180, 220, 60, 120)], [ringPiece(190, 205, 88, 92)], {
      offerUp: [{ turn: 15 }, {}],
    });
    const foul = wayInFoul(joint);
    expect(foul.areaMm2).toBeCloseTo(982.402, 1);
    // where its ends cross R200 they lie 20 from either side of the boss
    expect(foul.deepestMm).toBeCloseTo(20, 3);
  });

  it('counts a section once, however many legs go through it', () => {
    const joint = pairOf([box(0, 0, 40, 10)], [box(10, 5, 20, 30)], {
      offerUp: [{ shift: [10, 0] }, { shift: [5, 0] }, { shift: [10, 0] }, {}],
    });
    expect(wayInFoul(joint).areaMm2).toBeCloseTo(20 * 5, 3);
  });

  it('adds up over sections', () => {
    const joint = jointOf({
      fixed: castingOf({
        sections: [
          { id: 'left', depth: deep, loops: [box(-20, 0, -10, 10)] },
          { id: 'right', depth: deep, loops: [box(10, 0, 20, 10)] },
        ],
      }),
      moving: castingOf({ sections: [{ id: 'bar', depth: [-28, 0], loops: [box(-30, 8, 30, 12)] }] }),
      offerUp: [{ shift: [0, 5] }, {}],
    });
    const foul = wayInFoul(joint);
    expect(foul.areaMm2).toBeCloseTo(40, 4);
    expect(foul.deepestMm).toBeCloseTo(2, 3);
    expect(foul.regions.map(({ section }) => section)).toEqual(['left', 'right']);
  });
});

describe('the room it swings through', () => {
  it('holds the part at home and all its way', () => {
    const joint = pairOf([box(0, 0, 1, 1)], [ringPiece(190, 205, 88, 92)], { offerUp: [{ turn: 15 }, {}] });
    // drawn within 0.01 mm on the outside
    const area = regionAreaMm2(roomItSwingsThrough(joint));
    expect(area).toBeGreaterThan(982.402);
    expect(area).toBeLessThan(982.402 + 0.01 * 200);
  });

  it('is the part itself where only home is asked', () => {
    const area = regionAreaMm2(roomItSwingsThrough(pairOf([box(0, 0, 1, 1)], [box(50, 50, 60, 70)])));
    expect(area).toBeCloseTo(200, 6);
  });
});
