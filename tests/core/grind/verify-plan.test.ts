import { describe, expect, it } from 'vitest';
import { drain } from '../../../src/geometry/progress.ts';
import type { CutPlan } from '../../../src/grind/cut-plan.ts';
import { verifyPlan } from '../../../src/grind/verify-plan.ts';
import type { BandAnswer } from '../../../src/model/grind-answer.ts';
import { plannedDemo } from '../../support/markout-jobs.ts';

const { joint, plan } = plannedDemo('starter');
const doubts = (wrong: CutPlan): string[] => drain(verifyPlan(joint, wrong)).doubts.map(({ what }) => what);
const withBands = (change: (band: BandAnswer) => BandAnswer): CutPlan => ({
  ...plan,
  answer: {
    ...plan.answer,
    sections: plan.answer.sections.map((section) => ({ ...section, bands: section.bands.map(change) })),
  },
});

describe('measuring a plan again', () => {
  it('finds nothing against a right one', () => {
    expect(doubts(plan)).toEqual([]);
  });

  it('finds a part that was left as it was', () => {
    expect(doubts({ ...plan, part: joint.fixed }).length).toBeGreaterThan(0);
  });

  it('finds first, planned and last line in the wrong order', () => {
    const swapped = withBands((band) => ({ ...band, firstLoops: band.lastLoops, lastLoops: band.firstLoops }));
    expect(doubts(swapped)).toEqual(expect.arrayContaining(['first-line', 'last-line']));
  });

  it('finds an area and a volume that do not belong to the loops', () => {
    expect(doubts(withBands((band) => ({ ...band, areaMm2: band.areaMm2 + 0.1 })))).toContain('cut-area');
    expect(doubts({ ...plan, answer: { ...plan.answer, volumeMm3: 1 } })).toContain('cut-volume');
  });
});
