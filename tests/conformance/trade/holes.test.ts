import { describe, expect, test } from 'vitest';
import { clearanceHoleFor } from '../../../src/trade/clearance-holes.ts';
import { floatMm, positionZoneMm } from '../../../src/trade/floating-fasteners.ts';
import { tradeCases } from './trade-cases.ts';

// sums of a few decimal fractions: rounding only
const hair = 1e-12;

describe('clearance holes of ISO 273 (looked up)', () => {
  test.each(tradeCases.clearanceHoles.expected)(
    'M$majorMm: fine $fineMm, medium $mediumMm, coarse $coarseMm',
    (hole) => {
      expect(clearanceHoleFor(hole.majorMm)).toMatchObject(hole);
    },
  );

  test('a size the table has not is not guessed', () => {
    expect(clearanceHoleFor(13)).toBeNull();
  });
});

describe('how far a stud or tapped hole may disagree with one clearance hole, (H − F)/2 (ASME Y14.5 appendix B, computed)', () => {
  const { expected, tolerance } = tradeCases.floats;
  test.each(expected)('M$majorMm: fine $fineMm, medium $mediumMm, coarse $coarseMm', (float) => {
    const { majorMm } = float;
    const hole = clearanceHoleFor(majorMm);
    if (hole === null) throw new Error('no such size');
    for (const fit of ['fineMm', 'mediumMm', 'coarseMm'] as const)
      expect(Math.abs(floatMm(hole[fit], majorMm) - float[fit])).toBeLessThan(tolerance);
  });
});

test('a hole off by 0.3 and 0.4 mm fills a position zone of Ø 1 (2√(dx² + dy²), computed)', () => {
  expect(Math.abs(positionZoneMm(0.3, -0.4) - 1)).toBeLessThan(hair);
});
