import { describe, expect, it } from 'vitest';
import { drain } from '../../../src/geometry/progress.ts';
import type { Hole, Section } from '../../../src/job/casting.ts';
import type { CutBand, PartCut } from '../../../src/plan/part-cut.ts';
import type { PlanResult } from '../../../src/plan/plan-result.ts';
import { verifyPlan } from '../../../src/plan/verify/verify-plan.ts';
import { box } from '../../support/jobs.ts';
import { plannedDemo } from '../../support/markout-jobs.ts';

const { joint, plan } = plannedDemo('starter');
const doubts = (wrong: PlanResult): string[] => drain(verifyPlan(joint, wrong)).doubts.map(({ what }) => what);
const withCuts = (of: PlanResult, change: (cut: PartCut) => Partial<PartCut>): PlanResult => ({
  ...of,
  cuts: of.cuts.map((cut) => ({ ...cut, ...change(cut) })),
});
const withBands = (change: (band: CutBand) => CutBand): PlanResult =>
  withCuts(plan, ({ sections }) => ({
    sections: sections.map((section) => ({ ...section, bands: section.bands.map(change) })),
  }));

describe('measuring a plan again', () => {
  it('finds nothing against a right one', () => {
    expect(doubts(plan)).toEqual([]);
  });

  it('finds a part that was left as it was', () => {
    expect(doubts({ ...plan, judged: joint }).length).toBeGreaterThan(0);
  });

  it('finds first, planned and last line in the wrong order', () => {
    const swapped = withBands((band) => ({ ...band, first: band.last, last: band.first }));
    expect(doubts(swapped)).toEqual(expect.arrayContaining(['first-line', 'last-line']));
  });

  it('finds lines given out that are not on the safe side of what was proved', () => {
    const swapped = withBands(({ lines, ...band }) => ({
      ...band,
      lines: { ...lines, planned: lines.first, first: lines.last, last: lines.planned },
    }));
    expect(doubts(swapped).filter((what) => what === 'line-arcs')).toHaveLength(3);
  });

  it('finds lines given out that are farther off than told', () => {
    const closer = withBands(({ lines, ...band }) => ({ ...band, lines: { ...lines, boundMm: lines.boundMm / 4 } }));
    expect(doubts(closer)).toContain('line-arcs');
  });

  it('finds an area and a volume that do not belong to the loops', () => {
    expect(doubts(withBands((band) => ({ ...band, areaMm2: band.areaMm2 + 0.1 })))).toContain('cut-area');
    expect(doubts(withCuts(plan, () => ({ volumeMm3: 1 })))).toContain('cut-volume');
  });
});

describe('measuring a plan again, for what must stay', () => {
  const demo = plannedDemo('transfer-case');
  const doubtsOf = (wrong: PlanResult, of = demo.joint): string[] =>
    drain(verifyPlan(of, wrong)).doubts.map(({ what }) => what);

  it('finds nothing against a right plan with a fillet', () => {
    expect(doubtsOf(demo.plan)).toEqual([]);
  });

  it('finds metal that was not offered', () => {
    const sections = demo.joint.fixed.sections.map((section) => ({ ...section, mayCut: false }));
    expect(doubtsOf(demo.plan, { ...demo.joint, fixed: { ...demo.joint.fixed, sections } })).toContain(
      'cut-what-must-stay',
    );
  });

  it('finds a wall told thicker than it is, and a hole not told of', () => {
    const thicker = withCuts(demo.plan, ({ walls }) => ({
      walls: walls.map((wall) => ({ ...wall, nominalMm: wall.nominalMm + 1 })),
    }));
    expect(doubtsOf(thicker)).toContain('wall');
    const near = { ...(demo.joint.fixed.holes[0] as Hole), id: 'X', at: { x: 150, y: 119 }, diameterMm: 10 };
    const holed = { ...demo.joint, fixed: { ...demo.joint.fixed, holes: [...demo.joint.fixed.holes, near] } };
    expect(doubtsOf(demo.plan, holed)).toContain('wall');
  });

  it('finds metal taken away where the cutter cannot get', () => {
    // a wall put over the cut, which the plan was not made for
    const lid = {
      ...(demo.joint.fixed.sections[0] as Section),
      id: 'lid',
      depth: { fromMm: -5, toMm: 20 },
      loops: [box(100, -60, 220, 160)],
    };
    const covered = withCuts(demo.plan, ({ after }) => ({ after: { ...after, sections: [...after.sections, lid] } }));
    expect(doubtsOf(covered)).toContain('cutter-reach');
  });
});
