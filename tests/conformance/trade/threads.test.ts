import { describe, expect, test } from 'vitest';
import {
  largestMinor6HMm,
  metricThreads,
  minorDiameterMm,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../../src/trade/threads.ts';

// half a unit of the last digit printed, and a hair for where that digit falls on the half
const thousandths = 0.000501;

/** Printed tables: D, P, D2, D1 and the largest D1 of a 6H nut, mm; stress area, mm². */
const cases = [
  [5, 0.8, 4.48, 4.134, 4.334, 14.2],
  [6, 1, 5.35, 4.917, 5.153, 20.1],
  [8, 1.25, 7.188, 6.647, 6.912, 36.6],
  [8, 1, 7.35, 6.917, 7.153, 39.2],
  [10, 1.5, 9.026, 8.376, 8.676, 58.0],
  [10, 1.25, 9.188, 8.647, 8.912, 61.2],
  [10, 1, 9.35, 8.917, 9.153, 64.5],
  [11, 1.5, 10.026, 9.376, 9.676, 72.3],
  [11, 1.25, 10.188, 9.647, 9.912, 75.8],
  [12, 1.75, 10.863, 10.106, 10.441, 84.3],
  [12, 1.5, 11.026, 10.376, 10.676, 88.1],
  [12, 1.25, 11.188, 10.647, 10.912, 92.1],
  [14, 2, 12.701, 11.835, 12.21, 115],
  [14, 1.5, 13.026, 12.376, 12.676, 125],
  [16, 2, 14.701, 13.835, 14.21, 157],
  [16, 1.5, 15.026, 14.376, 14.676, 167],
] as const;

describe.each(cases)('M%d × %d', (majorMm, pitchMm, d2, d1, largestD1, areaMm2) => {
  test('has the pitch and minor diameters of ISO 724 (computed from its formulas)', () => {
    expect(Math.abs(pitchDiameterMm(majorMm, pitchMm) - d2)).toBeLessThan(thousandths);
    expect(Math.abs(minorDiameterMm(majorMm, pitchMm) - d1)).toBeLessThan(thousandths);
  });

  test('has the largest 6H minor diameter of ASME B1.13M (looked up for M10–M14, others from memory)', () => {
    expect(Math.abs((largestMinor6HMm(majorMm, pitchMm) ?? 0) - largestD1)).toBeLessThan(thousandths);
  });

  test('has its stress area to three figures (looked up for coarse threads, fine ones computed)', () => {
    expect(Number(stressAreaMm2(majorMm, pitchMm).toPrecision(3))).toBe(areaMm2);
  });

  test('is drilled between its minor diameter and the largest one a 6H thread may have', () => {
    const thread = metricThreads.find((t) => t.majorMm === majorMm && t.pitchMm === pitchMm);
    expect(thread?.tappingDrillMm).toBeGreaterThanOrEqual(d1);
    expect(thread?.tappingDrillMm).toBeLessThanOrEqual(largestD1);
  });
});

test('the table of threads holds these and no others', () => {
  expect(metricThreads.map((t) => [t.majorMm, t.pitchMm])).toEqual(cases.map(([d, p]) => [d, p]));
});
