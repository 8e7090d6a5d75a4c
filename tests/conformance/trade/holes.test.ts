import { describe, expect, test } from 'vitest';
import { clearanceHoleFor } from '../../../src/trade/clearance-holes.ts';
import { floatMm, positionZoneMm } from '../../../src/trade/floating-fasteners.ts';
import { titled } from '../../support/titled.ts';
import { tradeCases } from './trade-cases.ts';

describe('clearance holes of ISO 273 (looked up from M5 to M16 but for M7, others from memory)', () => {
  test.each(tradeCases.clearanceHoles.expected)(
    'M$majorMm: fine $fineMm, medium $mediumMm, coarse $coarseMm',
    (hole) => {
      expect(clearanceHoleFor(hole.majorMm)).toMatchObject(hole);
    },
  );

  test.each(tradeCases.sizesNotListed.expected)(
    'M$majorMm, a size the table has not, is not guessed',
    ({ majorMm }) => {
      expect(clearanceHoleFor(majorMm)).toBeNull();
    },
  );
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

describe('the position zone a hole fills, 2√(dx² + dy²) (computed)', () => {
  const { expected, tolerance } = tradeCases.positionZones;
  test.each(titled(expected))('%s', (_, { offMm, zoneMm }) => {
    expect(Math.abs(positionZoneMm(...offMm) - zoneMm)).toBeLessThan(tolerance);
  });
});
