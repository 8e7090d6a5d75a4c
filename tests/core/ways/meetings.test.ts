import { describe, expect, it } from 'vitest';
import { metAt } from '../../../src/ways/meetings.ts';
import { box, castingOf, disc, dowel } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const deg = Math.PI / 180;
const at = (turnDeg: number, standOffMm: number) => ({ turnRad: turnDeg * deg, standOffMm });

/** A boss on the fixed part and a lug that passes it on a circle of 100 mm, their depths overlapping by halves at home. */
const discs = {
  fixed: castingOf({
    sections: [
      { id: 'boss', depth: [10, 30], loops: [disc(100, 0, 10)] },
      { id: 'rib', depth: [40, 50], loops: [disc(100, 0, 10)] },
    ],
  }),
  moving: castingOf({ sections: [{ id: 'lug', depth: [-20, -15], loops: [disc(100, 0, 5)] }] }),
  clearance: 2,
  depthMarginMm: 0,
};

describe('what is in the way at a turn and a stand-off', () => {
  it('is the sections that foul there, and the depth that they share, from the fixed face', () => {
    const { meetings } = metAt(jointOf(discs), at(0, 0));
    expect(meetings).toEqual([
      { fixed: 'boss', moving: 'lug', how: 'fouls', distanceMm: null, depth: { fromMm: 15, toMm: 20 } },
    ]);
  });

  it('shares less depth the farther off it stands, and none beyond', () => {
    const joint = jointOf(discs);
    // the lug reaches 20 mm beyond its face, the boss begins 10 mm behind its own
    expect(metAt(joint, at(0, 7)).meetings[0]?.depth).toEqual({ fromMm: 10, toMm: 13 });
    expect(metAt(joint, at(0, 10)).meetings).toEqual([]);
    expect(metAt(joint, at(0, 500)).meetings).toEqual([]);
  });

  it('is told by how far where it is only too near, to the closed form', () => {
    // from middle to middle 200·sin(turn/2), less the radii of both
    const turnDeg = 9.2;
    const apartMm = 200 * Math.sin((turnDeg * deg) / 2) - 15;
    const [near] = metAt(jointOf(discs), at(turnDeg, 0)).meetings;
    expect(near?.how).toBe('near');
    expect(near?.distanceMm).toBeCloseTo(apartMm, 6);
    expect(metAt(jointOf(discs), at(10, 0)).meetings).toEqual([]);
  });

  it('is unknown where nobody has traced', () => {
    const traced = { depth: [0, 30] as const, loops: [box(50, -30, 130, 30)] };
    const joint = jointOf({ ...discs, fixed: castingOf({ traced, sections: [] }) });
    expect(metAt(joint, at(0, 0)).meetings).toEqual([]);
    expect(metAt(joint, at(30, 0)).meetings).toEqual([
      { fixed: null, moving: 'lug', how: 'unknown', distanceMm: null, depth: { fromMm: 15, toMm: 20 } },
    ]);
  });

  it('says where the dowels are engaged', () => {
    const joint = jointOf({
      ...discs,
      fixed: castingOf({ sections: [], holes: [dowel('D1', [-150, 0], 9), dowel('D2', [0, 150], 9)] }),
      moving: castingOf({ sections: [], holes: [dowel('P1', [-150, 0]), dowel('P2', [0, 150])] }),
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      nothingShares: true,
    });
    expect(metAt(joint, at(3, 8)).onDowels).toBe(true);
    expect(metAt(joint, at(3, 12)).onDowels).toBe(false);
  });
});
