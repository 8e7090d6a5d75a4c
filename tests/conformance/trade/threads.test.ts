import { describe, expect, test } from 'vitest';
import {
  largestMinor6HMm,
  metricThreads,
  minorDiameterMm,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../../src/trade/threads.ts';
import { tradeCases } from './trade-cases.ts';

const { expected: cases, tolerance } = tradeCases.threads;

describe.each(cases)('M$majorMm × $pitchMm', (thread) => {
  const { majorMm, pitchMm } = thread;

  test('has the pitch and minor diameters of ISO 724 (computed from its formulas)', () => {
    expect(Math.abs(pitchDiameterMm(majorMm, pitchMm) - thread.pitchDiameterMm)).toBeLessThan(tolerance);
    expect(Math.abs(minorDiameterMm(majorMm, pitchMm) - thread.minorDiameterMm)).toBeLessThan(tolerance);
  });

  test('has the largest 6H minor diameter of ASME B1.13M (looked up for M10–M14, others from memory)', () => {
    expect(Math.abs((largestMinor6HMm(majorMm, pitchMm) ?? 0) - thread.largestMinor6HMm)).toBeLessThan(tolerance);
  });

  test('has its stress area to three figures (looked up for coarse threads, fine ones computed)', () => {
    expect(Number(stressAreaMm2(majorMm, pitchMm).toPrecision(3))).toBe(thread.stressAreaMm2);
  });

  test('is drilled between its minor diameter and the largest one a 6H thread may have', () => {
    const listed = metricThreads.find((t) => t.majorMm === majorMm && t.pitchMm === pitchMm);
    expect(listed?.tappingDrillMm).toBeGreaterThanOrEqual(thread.minorDiameterMm);
    expect(listed?.tappingDrillMm).toBeLessThanOrEqual(thread.largestMinor6HMm);
  });
});

test('the table of threads holds these and no others', () => {
  expect(metricThreads.map((t) => [t.majorMm, t.pitchMm])).toEqual(cases.map((t) => [t.majorMm, t.pitchMm]));
});
