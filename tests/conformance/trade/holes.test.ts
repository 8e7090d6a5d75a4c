import { describe, expect, test } from 'vitest';
import { clearanceHoleFor } from '../../../src/trade/clearance-holes.ts';
import { floatMm, positionZoneMm } from '../../../src/trade/floating-fasteners.ts';

// sums of a few decimal fractions: rounding only
const hair = 1e-12;

describe('clearance holes of ISO 273 (looked up)', () => {
  test.each([
    [5, 5.3, 5.5, 5.8],
    [6, 6.4, 6.6, 7],
    [8, 8.4, 9, 10],
    [10, 10.5, 11, 12],
    [12, 13, 13.5, 14.5],
    [14, 15, 15.5, 16.5],
    [16, 17, 17.5, 18.5],
  ])('M%d: fine %f, medium %f, coarse %f', (majorMm, fineMm, mediumMm, coarseMm) => {
    expect(clearanceHoleFor(majorMm)).toMatchObject({ majorMm, fineMm, mediumMm, coarseMm });
  });

  test('a size the table has not is not guessed', () => {
    expect(clearanceHoleFor(13)).toBeNull();
  });
});

describe('how far a stud or tapped hole may disagree with one clearance hole, (H − F)/2 (ASME Y14.5 appendix B, computed)', () => {
  test.each([
    [8, 0.2, 0.5, 1],
    [10, 0.25, 0.5, 1],
    [12, 0.5, 0.75, 1.25],
    [16, 0.5, 0.75, 1.25],
  ])('M%d: fine %f, medium %f, coarse %f', (majorMm, fine, medium, coarse) => {
    const hole = clearanceHoleFor(majorMm);
    if (hole === null) throw new Error('no such size');
    expect(Math.abs(floatMm(hole.fineMm, majorMm) - fine)).toBeLessThan(hair);
    expect(Math.abs(floatMm(hole.mediumMm, majorMm) - medium)).toBeLessThan(hair);
    expect(Math.abs(floatMm(hole.coarseMm, majorMm) - coarse)).toBeLessThan(hair);
  });
});

test('a hole off by 0.3 and 0.4 mm fills a position zone of Ø 1 (2√(dx² + dy²), computed)', () => {
  expect(Math.abs(positionZoneMm(0.3, -0.4) - 1)).toBeLessThan(hair);
});
