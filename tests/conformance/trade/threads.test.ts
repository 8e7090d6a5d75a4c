import { describe, expect, test } from 'vitest';
import { metricThreads } from '../../../src/trade/metric-threads.ts';
import { largestMinor6HMm, minorDiameterMm, pitchDiameterMm, stressAreaMm2 } from '../../../src/trade/threads.ts';
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

test('the table of threads holds these and the rest from M3 to M24, each once, coarsest pitch of a size first', () => {
  const listed = metricThreads.map((t) => `${t.majorMm} ${t.pitchMm}`);
  expect(listed).toEqual(expect.arrayContaining(cases.map((t) => `${t.majorMm} ${t.pitchMm}`)));
  expect(new Set(listed).size).toBe(listed.length);
  expect([metricThreads[0]?.majorMm, metricThreads.at(-1)?.majorMm]).toEqual([3, 24]);
  for (const size of new Set(metricThreads.map((t) => t.majorMm)))
    expect(metricThreads.filter((t) => t.majorMm === size).map((t) => t.coarse)).toEqual([
      true,
      ...metricThreads.filter((t) => t.majorMm === size && !t.coarse).map(() => false),
    ]);
});

describe('stress areas of ISO 898-1 (from memory, three figures)', () => {
  test.each(tradeCases.stressAreas.expected)('M$majorMm × $pitchMm: $stressAreaMm2 mm²', (thread) => {
    expect(Number(stressAreaMm2(thread.majorMm, thread.pitchMm).toPrecision(3))).toBe(thread.stressAreaMm2);
  });
});
