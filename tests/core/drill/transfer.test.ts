import { describe, expect, it } from 'vitest';
import { drillResult } from '../../../src/drill/drill-result.ts';
import type { DrillRules } from '../../../src/drill/hole-metal.ts';
import type { TransferredHole } from '../../../src/drill/transfer.ts';
import type { HoleKind } from '../../../src/job/casting.ts';
import { drillText } from '../../../src/words/drill-text.ts';
import { box, castingOf, disc, dowel, holeOf, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const rules: DrillRules = { edgeFactor: 1.5, drillErrorMm: 0, spotFaceMm: null, socketMm: null };
const rad = Math.PI / 180;
const turned = (x: number, y: number, deg: number): readonly [number, number] => [
  x * Math.cos(deg * rad) - y * Math.sin(deg * rad),
  x * Math.sin(deg * rad) + y * Math.cos(deg * rad),
];

const plate = [{ id: 'plate', depth: [0, 20] as const, loops: [box(-100, -60, 100, 60)] }];
const dowels = [dowel('D1', [-80, 0]), dowel('D2', [80, 0])];

/** A part drawn turned by 30° and 7 to the right, with a hole that is to come to (x, y) on the plate. */
function carried(x: number, y: number, said: Partial<JobSpec> = {}, kind: HoleKind = 'bolt') {
  const drawn = (px: number, py: number): readonly [number, number] => {
    const [tx, ty] = turned(px, py, 30);
    return [tx + 7, ty];
  };
  return jointOf({
    fixed: castingOf({ name: 'block', sections: plate, holes: dowels }),
    moving: castingOf({
      name: 'bracket',
      sections: [{ id: 'foot', depth: [0, 8], loops: [disc(0, 0, 200)] }],
      holes: [
        dowel('P1', drawn(-80, 0)),
        dowel('P2', drawn(80, 0)),
        holeOf({ id: 'H1', kind, at: drawn(x, y), diameterMm: 10 }),
      ],
    }),
    dowels: [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ],
    nothingShares: true,
    ...said,
  });
}

const marked = (x: number, y: number): TransferredHole | undefined =>
  drillResult(carried(x, y), null, rules).transfer.marked[0];

// closed forms: a turn and a shift put back; distances in a rectangle
describe('a bolt hole marked on the other part', () => {
  it('comes where the dowels lay it, whatever frame it was drawn in', () => {
    const one = marked(30, 20);
    expect(one).toMatchObject({ part: 'fixed', verdict: 'does', largestMm: null, moveMm: null });
    expect(one?.inDrawing.x).toBeCloseTo(30, 9);
    expect(one?.inDrawing.y).toBeCloseTo(20, 9);
    expect(one?.radiusMm).toBeCloseTo(Math.hypot(30, 20), 9);
    expect(one?.angleRad).toBeCloseTo(Math.atan2(20, 30), 9);
    expect(one?.dividers).toEqual([
      { from: 'D1', mm: expect.closeTo(Math.hypot(110, 20), 9) },
      { from: 'D2', mm: expect.closeTo(Math.hypot(50, 20), 9) },
    ]);
  });

  it('is told in the own drawing of the part it comes to, where that was seen from the other side', () => {
    const back = castingOf({ name: 'block', sections: plate, holes: dowels, mirrored: true, viewedFrom: 'back' });
    const [one] = drillResult(carried(30, 20, { fixed: back }), null, rules).transfer.marked;
    expect(one?.inDrawing.x).toBeCloseTo(-30, 9);
  });

  it('too near an edge names the largest that would do, and how far aside it would', () => {
    // 8 from the edge: 1.5 × d ≤ 8; a hole of 10 stands right 15 from it
    const one = marked(0, 52);
    expect(one?.verdict).toBe('does-not');
    expect(one?.largestMm).toBeCloseTo(8 / 1.5, 6);
    expect(one?.moveMm).toBeCloseTo(7, 3);
  });

  it('measures both on the face, not on a skirt that stands proud of it', () => {
    const skirt = { id: 'skirt', depth: [-20, 0] as const, loops: [disc(-80, 40, 5)] };
    const fixed = castingOf({ name: 'block', sections: [...plate, skirt], holes: dowels });
    const [one] = drillResult(carried(0, 52, { fixed }), null, rules).transfer.marked;
    expect(one?.largestMm).toBeCloseTo(8 / 1.5, 6);
    expect(one?.moveMm).toBeCloseTo(7, 3);
  });

  it('off the metal has no such hole, nor far from it a place near', () => {
    expect(marked(0, 62)).toMatchObject({ verdict: 'does-not', largestMm: null, metal: { stands: 'over-the-edge' } });
    expect(marked(0, 90)).toMatchObject({ verdict: 'does-not', moveMm: null, metal: { stands: 'in-the-air' } });
  });

  it('for a stud, or a tapped hole, is drilled through as ISO 273 has it: 13.5 mm for M12', () => {
    const joint = carried(30, 20, {}, 'stud');
    const withThread = {
      ...joint,
      moving: {
        ...joint.moving,
        holes: joint.moving.holes.map((hole) =>
          hole.id === 'H1' ? { ...hole, thread: 'M12x1.75', diameterMm: null } : hole,
        ),
      },
    };
    expect(drillResult(withThread, null, rules).transfer.marked[0]?.diameterMm).toBe(13.5);
  });

  it('is none where a hole is there already, nor where it is paired', () => {
    const there = holeOf({ id: 'B1', kind: 'tapped', at: [30.3, 20], diameterMm: 8.5 });
    const fixed = castingOf({ name: 'block', sections: plate, holes: [...dowels, there] });
    const { transfer, bolts } = drillResult(carried(30, 20, { fixed }), null, rules);
    expect(transfer.marked).toEqual([]);
    expect(transfer.met).toContainEqual({ of: 'fixed', hole: 'B1', met: 'H1', offMm: expect.closeTo(0.3, 9) });
    expect(bolts.met).toBe(1);
    const paired = drillResult(carried(30, 20, { fixed, bolts: [['B1', 'H1']] }), null, rules);
    expect(paired.transfer).toEqual({ marked: [], met: [] });
    expect(paired.bolts.paired).toBe(1);
  });

  it('is marked still where the hole that is there would not take its bolt', () => {
    const small = holeOf({ id: 'B1', kind: 'bolt', at: [30.3, 20], diameterMm: 6 });
    const threaded = holeOf({ id: 'H1', kind: 'tapped', at: [30, 20], thread: 'M12x1.75' });
    const joint = carried(30, 20, { fixed: castingOf({ name: 'block', sections: plate, holes: [...dowels, small] }) });
    const holes = joint.moving.holes.map((hole) => (hole.id === 'H1' ? { ...threaded, at: hole.at } : hole));
    const { transfer } = drillResult({ ...joint, moving: { ...joint.moving, holes } }, null, rules);
    expect(transfer.marked.map(({ hole }) => hole.id)).toContain('H1');
    expect(transfer.met).toEqual([]);
  });

  it('is nowhere with fewer than two dowels, and that is said where one would look for it', () => {
    const one = drillResult(carried(30, 20, { dowels: [['D1', 'P1']] }), null, rules);
    expect(one).toMatchObject({ refusal: 'too-few-dowels', transfer: { marked: [] } });
    expect(drillText(carried(30, 20, { dowels: [['D1', 'P1']] }), one)).toMatch(
      /^UNDECIDED: nothing is planned, and no hole is carried from one part to the other, since\s+fewer than two\s+dowels are paired/,
    );
    expect(drillText(carried(30, 20, { dowels: [['D1', 'P1']] }), one)).toMatch(
      /\nNot carried over\n {2}- Bolt holes are marked on neither part: no hole is carried/,
    );
  });
});

describe('the bolts that remain', () => {
  it('are told with the longest stretch without one, and as no approval', () => {
    const bolt = (id: string, deg: number) => {
      const [x, y] = turned(50, 0, deg);
      return holeOf({ id, kind: 'tapped', at: [x, y], thread: 'M10x1.5' });
    };
    const [a, b, c] = [bolt('A', 0), bolt('B', 90), bolt('C', 150)];
    const fixed = castingOf({ sections: plate, holes: [...dowels, a, b, c] });
    const moving = castingOf({
      sections: plate,
      holes: [
        dowel('P1', [-80, 0]),
        dowel('P2', [80, 0]),
        ...[a, b, c].map((hole) => ({ ...hole, id: `${hole.id}2`, kind: 'bolt' as const, diameterMm: 11 })),
      ],
    });
    const joint = jointOf({
      fixed,
      moving,
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      bolts: [
        ['A', 'A2'],
        ['B', 'B2'],
        ['C', 'C2'],
      ],
      nothingShares: true,
    });
    const result = drillResult(joint, null, rules);
    expect(result.bolts).toMatchObject({ paired: 3, met: 0, marked: 0 });
    // from C at 150° on to A at 360°: a chord of 2 · 50 · sin 105°
    expect(result.bolts.longest).toEqual({
      from: 'C',
      to: 'A',
      mm: expect.closeTo(100 * Math.sin(105 * rad), 9),
      rad: expect.closeTo(210 * rad, 9),
    });
    expect(drillText(joint, result)).toMatch(/information and no approval/);
  });
});
