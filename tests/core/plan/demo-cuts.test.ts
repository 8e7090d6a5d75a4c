import { describe, expect, it } from 'vitest';
import { plannedDemo } from '../../support/markout-jobs.ts';
import { answerOf } from '../../support/plan-answer.ts';

describe('the demo of a transfer case', () => {
  const answer = answerOf(plannedDemo('transfer-case'));

  // an independent calculation gives 162.2 mm², 2.9 cm³; the check is that the demo looks right
  it('needs 162 mm², and 2.9 cm³ where the lips pass; its ball cuts 6 past and gets at all of it', () => {
    const [band] = answer?.sections[0]?.bands ?? [];
    expect(answer?.sections.map(({ id, bands }) => [id, bands.length])).toEqual([['ribs', 1]]);
    expect(band?.neededAreaMm2).toBeCloseTo(162.2, 1);
    expect(answer?.cutter?.neededVolumeMm3).toBeCloseTo(2919, 0);
    expect(band?.depth).toEqual([12, 38]);
    expect(band?.cutterWay).toBe('as-needed');
    // a band 18 deep cut 4 past to its rib's end and 6 past within it
    const pastG = 162.19 * (2 + 6) * 7.15e-3;
    expect(Math.abs((answer?.cutter?.extraMassG ?? 0) - pastG)).toBeLessThan(0.2);
    expect(answer?.smallestFilletMm).toBe(6);
  });

  it('does not hold for its gallery wall, and names the wall that nobody measured', () => {
    expect(answer?.holds).toBe(false);
    // B4, a tapped hole of M12, is far enough: half its diameter is kept where nothing else is set
    expect(answer?.walls).toMatchObject([
      { hollow: 'oil gallery', kind: 'hollow', keepMm: 5, keepBy: 'stated', holds: false },
      { hollow: 'B4', kind: 'hole', keepMm: 6, keepBy: 'half-diameter', depthAssumed: true, holds: true },
    ]);
    expect(answer?.walls[0]?.nominalMm).toBeCloseTo(5.4, 1);
    expect(answer?.unmeasured).toMatchObject([{ section: 'ribs' }]);
  });
});

describe('the demo of a starter', () => {
  const answer = answerOf(plannedDemo('starter'));

  it('takes the lens alone, for the body is rounder than the cutter', () => {
    const [band] = answer?.sections[0]?.bands ?? [];
    expect(band).toMatchObject({ depth: [12, 40], cutterWay: 'as-needed' });
    expect(band?.areaMm2).toBeCloseTo(52.53, 2);
    expect(band?.takeOffMm).toBeCloseTo(4, 3);
  });

  it('has the ball run 6 past both ends of the boss, so that no fillet is left', () => {
    expect(answer?.cutter?.ends).toMatchObject([
      { section: 'boss', atMm: 12, what: 'run-past', mm: 6 },
      { section: 'boss', atMm: 40, what: 'run-past', mm: 6 },
    ]);
    expect(answer?.holds).toBe(true);
  });
});
