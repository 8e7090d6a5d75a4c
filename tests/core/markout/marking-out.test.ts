import { describe, expect, it } from 'vitest';
import { type MarkingRowAnswer as MarkingRow, markingRow } from '../../../src/answers/marking-row.ts';
import { box, castingOf, disc, dowel } from '../../support/jobs.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob, plannedWithoutCutter } from '../../support/markout-jobs.ts';
import { answerOf } from '../../support/plan-answer.ts';

const starter = plannedDemo('starter');
const carrier = plannedWithoutCutter('transfer-case');
const caseCut = caseCutInstead();
const lug = plannedJob(lugJob);
const tables = {
  starter: answerOf(starter).table,
  carrier: answerOf(carrier).table,
  'case cut instead': answerOf(caseCut).table,
  lug: answerOf(lug).table,
};
const nominalOf = ({ wall }: MarkingRow): number => wall?.nominalMm ?? Number.NaN;
const of = (rows: readonly MarkingRow[], kind: MarkingRow['kind']) => rows.filter((row) => row.kind === kind);

describe('a cut into a round boss beside a round body', () => {
  // body Ø96, boss Ø34 at 62.5 from it, 1.5 asked: the planned line is the circle R 49.5 (closed form)
  const [deepest] = of(tables.starter, 'deepest') as [MarkingRow];
  const boss = { x: 37.5, y: 50 };

  it('is deepest on the line of centres, 4.0 in', () => {
    expect(deepest.plannedMm).toBeCloseTo(4, 3);
    expect(deepest.radiusMm).toBeCloseTo(49.5, 3);
    expect(deepest.angleDeg).toBeCloseTo((Math.atan2(50, 37.5) * 180) / Math.PI, 1);
  });

  it('has its first and last line half a millimetre to either side: the trace error of what passes', () => {
    expect(deepest.firstMm).toBeCloseTo(3.5, 3);
    expect(deepest.lastMm).toBeCloseTo(4.5, 3);
  });

  it('leaves 9.0 to the drilling as planned, and 7.5 once last line, hollow and hand have had theirs', () => {
    expect(deepest.wall?.hollow).toBe('oil drilling');
    expect(deepest.wall?.nominalMm).toBeCloseTo(9, 3);
    expect(deepest.wall?.wallMm).toBeCloseTo(7.5, 3);
  });

  it('takes off at every place what lies between the boss as it is and the planned circle', () => {
    for (const { at, plannedMm } of tables.starter) {
      expect(plannedMm).toBeCloseTo(17 - Math.hypot(at[0] - boss.x, at[1] - boss.y), 3);
    }
  });

  it('begins and ends where the two circles cross', () => {
    // two circles of radii a, b, centres d apart cross at ± acos((a² + d² − b²)/2ad) from the line of centres
    const half = (Math.acos((49.5 ** 2 + 62.5 ** 2 - 17 ** 2) / (2 * 49.5 * 62.5)) * 180) / Math.PI;
    const middle = (Math.atan2(50, 37.5) * 180) / Math.PI;
    const ends = of(tables.starter, 'end').map(({ angleDeg }) => angleDeg);
    expect(ends[0]).toBeCloseTo(middle - half, 2);
    expect(ends[1]).toBeCloseTo(middle + half, 2);
  });
});

describe.each(Object.entries(tables))('the marking-out table: %s', (_, rows) => {
  it('has rows of the shape its schema says, numbered from 1', () => {
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(markingRow.parse(row)).toEqual(row);
    expect(rows.map(({ place }) => place)).toEqual(rows.map((_, i) => i + 1));
  });

  it('goes on by no more than 10 mm along an edge, from end to end', () => {
    for (const [i, row] of rows.entries()) {
      const before = rows[i - 1];
      if (before?.section !== row.section || before.edge !== row.edge) continue;
      expect(row.alongMm - before.alongMm).toBeGreaterThan(0);
      expect(row.alongMm - before.alongMm).toBeLessThanOrEqual(10.5);
    }
  });

  it('never has the first line past the planned, nor the planned past the last', () => {
    for (const { firstMm, plannedMm, lastMm } of rows) {
      expect(firstMm).toBeLessThanOrEqual(plannedMm + 1e-3);
      expect(plannedMm).toBeLessThanOrEqual(lastMm);
    }
  });

  it('has the deepest place of each edge deeper than its other places', () => {
    for (const deepest of of(rows, 'deepest')) {
      const edge = rows.filter((row) => row.section === deepest.section && row.edge === deepest.edge);
      const most = Math.max(...edge.map(({ plannedMm }) => plannedMm));
      expect(deepest.plannedMm).toBeGreaterThan(most - 0.05);
    }
  });
});

/** Where arcs of two radii about two centres cross, both places. */
function crossings(a: readonly number[], b: readonly number[], ra: number, rb: number): [number, number][] {
  const [ax = 0, ay = 0, bx = 0, by = 0] = [...a, ...b];
  const apart = Math.hypot(bx - ax, by - ay);
  const along = (ra ** 2 - rb ** 2 + apart ** 2) / (2 * apart);
  const across = Math.sqrt(Math.max(0, ra ** 2 - along ** 2));
  const [ux, uy] = [(bx - ax) / apart, (by - ay) / apart];
  return [1, -1].map((side) => [ax + along * ux - side * across * uy, ay + along * uy + side * across * ux]);
}

describe('finding a place again on the casting', () => {
  it.each([
    ['starter', starter, ['S1', 'S2', 'S3']],
    ['carrier', carrier, ['D1', 'D2']],
    ['case cut instead', caseCut, ['P1', 'P2']],
    ['lug', lug, ['D1', 'D2']],
  ] as const)('two divider distances from named holes cross at it: %s', (name, { joint, plan }, ids) => {
    const { holes } = joint[plan.cuts[0]?.part ?? 'fixed'];
    for (const { at, dividers } of tables[name]) {
      const [a, b] = dividers ?? [];
      if (a === undefined || b === undefined) throw new Error('no dividers');
      expect(ids).toContain(a.from);
      expect(ids).toContain(b.from);
      const [from, to] = [a, b].map((divider) => holes.find(({ id }) => id === divider.from)?.at);
      if (from === undefined || to === undefined) throw new Error('no such hole');
      const found = crossings([from.x, from.y], [to.x, to.y], a.mm, b.mm);
      expect(Math.min(...found.map(([x, y]) => Math.hypot(x - at[0], y - at[1])))).toBeLessThan(1e-3);
    }
  });

  it('angle and radius lead to it from the crank, looking at the face of the part that is cut', () => {
    for (const [name, mirror] of [
      ['carrier', 1],
      ['case cut instead', -1],
    ] as const) {
      for (const { at, angleDeg, radiusMm } of tables[name]) {
        expect(mirror * radiusMm * Math.cos((angleDeg * Math.PI) / 180)).toBeCloseTo(at[0], 4);
        expect(radiusMm * Math.sin((angleDeg * Math.PI) / 180)).toBeCloseTo(at[1], 4);
      }
    }
  });

  it('a part without two holes has no divider distances', () => {
    const bare = plannedJob({ ...lugJob, dowels: [], fixed: { ...lug.joint.fixed, holes: [dowel('D1', [-80, 0])] } });
    expect(answerOf(bare).table.map(({ dividers }) => dividers)).toContain(null);
  });
});

describe('the marks of a rib whose end comes off', () => {
  // rib 2 of the carrier: cut to R 175.5, its old end at x 180.8; from the demo's own figures
  const rib = tables.carrier.filter(({ edge, radiusMm }) => edge === 2 && radiusMm < 176);

  it('are taken square to the new end, not across to the flank', () => {
    const [middle] = of(rib, 'deepest') as [MarkingRow];
    expect(middle.plannedMm).toBeGreaterThan(5.2);
    expect(middle.plannedMm).toBeLessThan(6.2);
    expect(middle.lastMm - middle.plannedMm).toBeCloseTo(middle.plannedMm - middle.firstMm, 1);
  });
});

describe('an edge that takes off the whole tip of a rib', () => {
  // a rib 40 long and 12 wide, cut to R 142 less 2: its tip at 150, so 10 come off, more at the flanks of the arc
  const job = plannedJob({
    fixed: castingOf({ sections: [{ id: 'rib', depth: [0, 60], mayCut: true, loops: [box(110, -6, 150, 6)] }] }),
    moving: castingOf({ sections: [{ depth: [-36, 0], loops: [disc(0, 0, 170), disc(0, 0, 142)] }] }),
  });
  const rows = answerOf(job).table;

  it('is marked as one, and says the length that comes off all along', () => {
    expect(rows.length).toBeGreaterThan(2);
    for (const { wholeTip, plannedMm, at, lastMm, firstMm } of rows) {
      expect(wholeTip).toBe(true);
      // square to the edge, which leans with the arc by less than 3° here
      expect(Math.abs(plannedMm - (150 - at[0]))).toBeLessThan(0.15);
      expect(lastMm).toBeGreaterThan(plannedMm);
      expect(firstMm).toBeLessThan(plannedMm);
    }
  });

  it('is no notch, nor a shallow cut along a side', () => {
    for (const name of ['lug'] as const) expect(tables[name].some(({ wholeTip }) => wholeTip)).toBe(false);
    const slot = plannedJob({
      fixed: castingOf({ sections: [{ id: 'edge', depth: [0, 20], mayCut: true, loops: [box(-60, -40, 60, 40)] }] }),
      moving: castingOf({ sections: [{ id: 'lug', depth: [-10, 0], loops: [box(40, -10, 80, 10)] }] }),
      clearance: 0.2,
    });
    expect(answerOf(slot).table.some(({ wholeTip }) => wholeTip)).toBe(false);
  });
});

describe('extremes', () => {
  it('a corner of the cut is a place of its own', () => {
    // a square lug run 8 mm into a straight edge with hardly any clearance: a square notch
    const notch = plannedJob({
      fixed: castingOf({ sections: [{ id: 'edge', depth: [0, 20], mayCut: true, loops: [box(-60, -40, 60, 40)] }] }),
      moving: castingOf({ sections: [{ id: 'lug', depth: [-10, 0], traceErrorMm: 0, loops: [box(52, -10, 80, 14)] }] }),
      clearance: 0.2,
    });
    const places = answerOf(notch).table.map(({ at }) => at);
    for (const corner of [14.2, -10.2]) {
      const miss = places.map(([x, y]) => Math.hypot(x - 51.8, y - corner));
      // the corner is round by the clearance
      expect(Math.min(...miss)).toBeLessThan(0.2);
    }
  });

  it('the thinnest wall along an edge is a place of its own', () => {
    const rows = tables['case cut instead'].filter(({ wall }) => wall !== null);
    const thinnest = rows.reduce((a, b) => (nominalOf(a) <= nominalOf(b) ? a : b));
    // the cut is as deep everywhere, so its deepest place may be told to be the same
    expect(['wall', 'deepest']).toContain(thinnest.kind);
    // the least wall of the plan itself, measured over whole regions
    expect(nominalOf(thinnest)).toBeCloseTo(caseCut.plan.cuts[0]?.walls[0]?.nominalMm ?? Number.NaN, 2);
  });

  it('a wall out of reach is not spoken of', () => {
    const far = plannedJob({
      fixed: castingOf({
        sections: [{ depth: [0, 20], mayCut: true, loops: [box(-60, -40, 60, 40)] }],
        hollows: [{ depth: [0, 20], loops: [disc(0, 0, 5)] }],
      }),
      moving: castingOf({ sections: [{ depth: [-10, 0], loops: [box(58, -10, 80, 10)] }] }),
    });
    expect(answerOf(far).table.every(({ wall }) => wall === null)).toBe(true);
  });
});

it('a plan that takes nothing off has an empty table', () => {
  expect(answerOf(plannedDemo('adapter')).table).toEqual([]);
});
