import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { fileText } from '../../../src/files/file-text.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Casting } from '../../../src/job/casting.ts';
import { readPart } from '../../../src/job/read-part.ts';
import { type RoomResult, roomOnCrank } from '../../../src/room/room-on-crank.ts';
import { roomPart } from '../../../src/room/room-part.ts';
import { roomText } from '../../../src/words/room-text.ts';
import { demoToDraw } from '../../support/demos.ts';
import { box, type CastingSpec, castingOf, disc, dowel, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

/** A rib of the block far out, so that it limits nothing that the cases ask about. */
const block = castingOf({ name: 'block', sections: [{ id: 'rib', depth: [12, 90], loops: [box(300, -5, 340, 5)] }] });

const housing = (loops: Region, traced: CastingSpec['traced'] = null): Casting =>
  castingOf({ name: 'housing', sections: [{ id: 'lip', depth: [0, 40], loops }], traced });

const roomIn = (spec: JobSpec): RoomResult =>
  drain(roomOnCrank(jointOf({ fixed: block, nothingShares: true, clearance: { rotatingMm: 4 }, ...spec })));

/** Depths and radii, rounded so that the kernel's own rounding does not show. */
const told = (ranges: RoomResult['ranges']) =>
  ranges.map(({ depth, radiusMm }) => [
    depth.fromMm,
    depth.toMm,
    radiusMm === null ? null : Math.round(radiusMm * 1e4) / 1e4,
  ]);

const rib = [8, 94, 296];

describe('room about the crank', () => {
  // closed forms: the distance from the axis to the metal, less the clearance; along the crank lengthened by it
  it.each([
    ['a box 62 out', [box(62, -5, 66, 5)], 58],
    ['a box by its corner', [box(30, 40, 60, 80)], 46],
    ['a disc', [disc(100, 0, 20)], 76],
    ['a housing round the axis, by its bore', [disc(0, 0, 200), disc(0, 0, 140)], 136],
    ['a bore that lies beside the axis', [disc(0, 0, 200), disc(3, 4, 140)], 131],
    ['the axis in metal', [disc(10, 0, 50)], 0],
    ['metal nearer than the clearance', [box(3, -5, 66, 5)], 0],
  ])('is as far as the metal less the clearance: %s', (_, loops, radiusMm) => {
    expect(told(roomIn({ moving: housing(loops) }).ranges)).toEqual([
      [null, -44, null],
      [-44, 4, radiusMm],
      [4, 8, null],
      rib,
      [94, null, null],
    ]);
  });

  it('is limited by what passes on the way in, where it passes', () => {
    const { ranges } = roomIn({
      moving: housing([box(100, -5, 110, 5)]),
      offerUp: [{ standOff: 20, shift: [-150, 60] }, { standOff: 20, shift: [0, 60] }, { standOff: 20 }, {}],
    });
    // on leg 1 the box goes past the axis with its lower side 55 above it; home it is 100 off
    expect(told(ranges)).toEqual([
      [null, -64, null],
      [-64, -16, 51],
      [-16, 4, 96],
      [4, 8, null],
      rib,
      [94, null, null],
    ]);
    expect(ranges[1]?.limits).toMatchObject([{ part: 'moving', section: 'lip', leg: 1 }]);
    expect(ranges[1]?.limits[0]?.where?.y).toBeCloseTo(55, 6);
  });

  it('does not change with a turn about the axis, only over which depths', () => {
    const offerUp = [{ standOff: 100, turn: 40 }, { standOff: 15, turn: 40 }, { standOff: 15 }, {}];
    expect(told(roomIn({ moving: housing([box(62, -5, 66, 5)]), offerUp }).ranges).slice(0, 2)).toEqual([
      [null, -144, null],
      [-144, 4, 58],
    ]);
  });

  it('changes all the way along a leg that goes aside and inward at once: told by steps, none too large', () => {
    const { ranges } = roomIn({
      moving: housing([box(100, -5, 110, 5)]),
      offerUp: [{ standOff: 60, shift: [-60, 0] }, {}],
    });
    // at the stand-off s the box stands 100 − s off, and reaches from −s − 44 to 4 − s
    for (const { depth, radiusMm } of ranges.slice(1, -3)) {
      const deepest = depth.fromMm as number;
      const standOffMm = Math.min(60, 4 - deepest);
      expect(radiusMm).toBeCloseTo(96 - standOffMm, 4);
    }
    expect(ranges.length).toBeGreaterThan(20);
  });

  it('is less by every error at worst, of depth too', () => {
    const { worstRanges } = roomIn({ moving: housing([box(62, -5, 66, 5)]) });
    expect(told(worstRanges)).toEqual([
      [null, -45, null],
      [-45, 4, 57.5],
      [4, 7, null],
      [7, 95, 295.5],
      [95, null, null],
    ]);
  });

  it('ends where nobody has traced, and says so', () => {
    const moving = housing([box(62, -5, 66, 5)], { depth: [0, 40], loops: [disc(0, 0, 50)] });
    const joint = jointOf({ moving, fixed: block, nothingShares: true, clearance: { rotatingMm: 4 } });
    const room = drain(roomOnCrank(joint));
    expect(told(room.ranges)[1]).toEqual([-44, 4, 46]);
    expect(room.ranges[1]?.limits).toMatchObject([{ untraced: true }]);
    expect(roomText(joint, room)).toMatch(/limited by\s+what was not traced of housing/);
    expect(roomText(joint, room)).toMatch(/Where nobody has traced, metal is taken to stand/);
  });

  it('is one range where no metal has a depth', () => {
    const sections = [{ depth: null, loops: [box(62, -5, 66, 5)] }];
    const joint = jointOf({ fixed: castingOf({ sections }), moving: castingOf({ sections }), nothingShares: true });
    const room = drain(roomOnCrank(joint));
    expect(told(room.ranges)).toEqual([[null, null, 58]]);
    expect(roomText(joint, room)).toMatch(/At every depth: 116.0 mm across at most/);
    expect(roomPart(room.ranges, 'mm')?.sections).toMatchObject([{ loops: [{ radius: expect.closeTo(58, 4) }] }]);
  });

  it('is not told of drawings that do not register', () => {
    const [fixed, moving] = [
      castingOf({ holes: [dowel('D1', [-100, 0]), dowel('D2', [100, 0])] }),
      castingOf({ holes: [dowel('P1', [-100, 0]), dowel('P2', [120, 0])] }),
    ];
    const dowels = [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ] as const;
    const joint = jointOf({ fixed, moving, dowels });
    const room = drain(roomOnCrank(joint));
    expect(room).toMatchObject({ reason: 'dowels-do-not-register', ranges: [], worstRanges: [] });
    expect(roomText(joint, room)).toMatch(/^UNDECIDED: the drawings do not register/);
    expect(roomText(joint, room)).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('says that no way in was looked at where the fit states none', () => {
    const joint = jointOf({ fixed: block, moving: housing([box(62, -5, 66, 5)]), nothingShares: true });
    expect(roomText(joint, drain(roomOnCrank(joint)))).toMatch(/The fit states no way in/);
  });
});

describe('the room of a demo', () => {
  // the case's bell as drawn: 136 at its rear, 145 before that, along its bore; 4 are kept
  it('is what its bell leaves', () => {
    const { joint } = demoToDraw('transfer-case');
    expect(told(drain(roomOnCrank(joint)).ranges).slice(0, 4)).toEqual([
      [null, -290, null],
      [-290, -48, 131.9999],
      [-48, -4, 140.9999],
      [-4, 94, 46],
    ]);
  });

  it.each([
    ['transfer-case', 'mm'],
    ['transfer-case', 'in'],
    ['adapter', 'mm'],
    ['adapter', 'in'],
  ] as const)('put into the fit as a part of %s in %s it keeps its clearance at worst', (demo, units) => {
    const { joint } = demoToDraw(demo);
    const room = drain(roomOnCrank(joint));
    const part = roomPart(room.worstRanges, units);
    if (part === null) throw new Error('no room');
    const read = readPart('room.part.json', fileText(part), 'rotating');
    if (!read.ok) throw new Error(JSON.stringify(read.findings));
    const { rotating } = drain(checkJoint({ ...joint, rotating: [read.value] }));
    expect(rotating).toHaveLength(2);
    for (const { state, clearanceMm } of rotating) {
      expect(state).toBe('clear');
      expect(clearanceMm).toBeGreaterThan(4);
    }
  });
});
