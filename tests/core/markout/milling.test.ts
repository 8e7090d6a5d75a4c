import { describe, expect, it } from 'vitest';
import { markoutOf } from '../../../src/drawing/markout/markout-sheets.ts';
import { millingCsv, millingScenes } from '../../../src/drawing/markout/milling-sheet.ts';
import { type Edge, pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import type { Bench } from '../../../src/markout/marking-out-bench.ts';
import { type Milling, millingOf, onTable } from '../../../src/markout/milling.ts';
import { textBoxes } from '../../support/drawings.ts';
import { box, castingOf, disc, dowel, type JobSpec } from '../../support/jobs.ts';
import { plannedDemo, plannedJob } from '../../support/markout-jobs.ts';
import { benchesFor, type PlannedJoint } from '../../support/plan-answer.ts';

const benchOf = (job: PlannedJoint): Bench => benchesFor(job)[0] as Bench;

function milledOn(bench: Bench): Milling {
  const milling = millingOf(bench);
  if ('why' in milling) throw new Error(milling.why);
  return milling;
}

const cutter = { radiusMm: 6, nose: 'ball', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null } as const;

/** A rib toward a housing with a bore of 144 about the axis: with 2 mm asked it is cut to a radius of 142. */
const rib: JobSpec = {
  fixed: castingOf({
    name: 'Block',
    sections: [{ id: 'rib', depth: [0, 60], mayCut: true, loops: [box(100, -6, 150, 6)] }],
    holes: [dowel('D1', [-120, 0], 9), dowel('D2', [0, -160], 9)],
  }),
  moving: castingOf({
    name: 'Housing',
    sections: [{ id: 'ring', depth: [-36, 0], loops: [disc(0, 0, 160), disc(0, 0, 144)] }],
    holes: [dowel('P1', [-120, 0]), dowel('P2', [0, -160])],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  cutter,
};

const edgesIn = ({ passes }: Milling): Edge[] => passes.flatMap(({ lines }) => lines.flat());
const alongEdges = (edges: readonly Edge[]) =>
  edges.flatMap((edge) => Array.from({ length: 21 }, (_, i) => pointOnEdge(edge, i / 20)));

/** From a point to a straight edge, by projection; written out here so that it shares nothing with the code. */
function toSegment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const [ux, uy] = [bx - ax, by - ay];
  const t = Math.min(1, Math.max(0, ((px - ax) * ux + (py - ay) * uy) / (ux * ux + uy * uy || 1)));
  return Math.hypot(px - ax - t * ux, py - ay - t * uy);
}

describe('lines of the middle of a cutter', () => {
  it('run at its radius from the planned edge: an arc of 142 + 6 about the axis', () => {
    const milling = milledOn(benchOf(plannedJob(rib)));
    const long = edgesIn(milling).filter((edge) => edge.kind === 'arc' && edge.radius > 20);
    expect(long).toHaveLength(1);
    // arcs are told within 3e-4 mm of the line they stand for
    for (const { x, y } of alongEdges(long)) expect(Math.abs(Math.hypot(x, y) - 148)).toBeLessThan(1e-3);
    expect(milling.passes.map(({ isKeptOff }) => isKeptOff)).toEqual([false]);
  });

  it('are set up from two dowels: 0, 0 in the one, the other on X, and nothing else is moved', () => {
    const { datum, ...milling } = milledOn(benchOf(plannedJob(rib)));
    expect([datum.origin.id, datum.along.id]).toEqual(['D1', 'D2']);
    // D1 to D2 is 200 (3, 4, 5); the axis is 120 from D1 and 160 from D2, at a right angle
    for (const edge of edgesIn({ datum, ...milling })) {
      const placed = onTable(edge, datum);
      if (placed.kind !== 'arc' || placed.radius < 20) continue;
      expect(placed.centre.x).toBeCloseTo((120 * 120) / 200, 1);
      expect(placed.centre.y).toBeCloseTo((120 * 160) / 200, 1);
    }
  });

  it.each(['transfer-case', 'starter'] as const)('keep their radius from all metal that stays: %s', (name) => {
    const bench = benchOf(plannedDemo(name));
    const { passes, cutter: used } = milledOn(bench);
    for (const { lines, tipsMm } of passes) {
      const polygons = bench.after.sections
        .filter(({ depth }) => depth === null || depth.fromMm < Math.min(...tipsMm))
        .flatMap(({ loops }) => polygonise(loops, 1e-3, 'inside'));
      for (const { x, y } of alongEdges(lines.flat())) {
        const nearest = polygons.map((polygon) =>
          Math.min(
            ...polygon.map((a, i) => {
              const b = polygon[(i + 1) % polygon.length] ?? a;
              return toSegment(x, y, a.x, a.y, b.x, b.y);
            }),
          ),
        );
        expect(Math.min(...nearest)).toBeGreaterThan(used.radiusMm - 2e-3);
      }
    }
  });

  it('go down by the stepover of a ball, and to the end of the cut at once with a flat nose', () => {
    const tips = (said: Partial<typeof cutter | { stepoverMm: number; nose: 'flat' }>): number[][] =>
      milledOn(benchOf(plannedJob({ ...rib, cutter: { ...cutter, ...said } }))).passes.map(({ tipsMm }) => [...tipsMm]);
    // 36 deep, 2 of margin, 6 past it for the ball
    expect(tips({ stepoverMm: 10 })).toEqual([[10, 20, 30, 40, 44]]);
    expect(tips({ nose: 'flat' })).toEqual([[38]]);
  });

  it('of many steps are told whole: on the sheet by their ends and the step, in the table one by one', () => {
    const bench = benchOf(plannedJob({ ...rib, cutter: { ...cutter, stepoverMm: 1.5 } }));
    const milling = milledOn(bench);
    const written = millingScenes(bench, milling, false)
      .flatMap(textBoxes)
      .map(({ text }) => text);
    expect(written).toContain('1.50 to 43.50 every 1.50, 44.00');
    expect(written.filter((text) => text.endsWith('…'))).toEqual([]);
    expect(millingCsv(bench, milling)).toContain('40.50, 42.00, 43.50, 44.00');
  });

  it('that metal nearer the face keeps off part of the edge say so', () => {
    const covered = castingOf({
      name: 'Block',
      sections: [
        { id: 'rib', depth: [10, 60], mayCut: true, loops: [box(100, -6, 150, 6)] },
        { id: 'cover', depth: [0, 10], loops: [box(100, 2, 143.5, 30)] },
      ],
      holes: [dowel('D1', [-120, 0], 9), dowel('D2', [0, -160], 9)],
    });
    const near = milledOn(benchOf(plannedJob({ ...rib, fixed: covered })));
    expect(near.passes.some(({ isKeptOff }) => isKeptOff)).toBe(true);
  });

  it('are not made without a cutter, in a mirror, or with nothing to set up by; that is said', () => {
    const why = (job: PlannedJoint, said: Partial<Bench> = {}): string => {
      const milling = millingOf({ ...benchOf(job), ...said });
      return 'why' in milling ? milling.why : '';
    };
    expect(why(plannedJob({ ...rib, cutter: null }))).toContain('no cutter');
    expect(why(plannedJob(rib), { mirrored: true })).toContain('mirror');
    expect(why(plannedJob(rib), { holes: null })).toContain('two holes');
    expect(markoutOf([benchOf(plannedJob({ ...rib, cutter: null }))]).notMade.join(' ')).toContain(
      'No lines for the milling machine',
    );
  });
});
