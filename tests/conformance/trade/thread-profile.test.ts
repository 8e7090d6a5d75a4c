import { describe, expect, test } from 'vitest';
import { metricThreads } from '../../../src/trade/metric-threads.ts';
import {
  pipeDrillSource,
  pipeTaper,
  pipeThreadHeightMm,
  pipeThreadSource,
  pipeThreads,
} from '../../../src/trade/pipe-threads.ts';
import {
  largestMinor6HMm,
  minorDiameterMm,
  parseThread,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../../src/trade/threads.ts';
import {
  minorTolerance2BMm,
  type UnifiedThread,
  unifiedDrillMm,
  unifiedThreads,
} from '../../../src/trade/unified-threads.ts';
import { tradeCases } from './trade-cases.ts';

const deg = Math.PI / 180;

/**
 * Where a groove with a flat of P/8 at the major diameter and flanks at 30° is so wide: the diameter, got from the
 * widths along the axis alone and from no height of a triangle.
 */
const diameterWhereGrooveIs = (wide: number, majorMm: number, pitchMm: number): number =>
  majorMm - (2 * (wide - 1 / 8) * pitchMm) / 2 / Math.tan(30 * deg);

/** The R40 series between 100 and 1000, from memory of ISO 3. */
const preferredUm = [
  95, 100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355,
  375, 400, 425, 450, 475, 500, 530,
];

describe.each(metricThreads)('M$majorMm × $pitchMm', ({ majorMm, pitchMm, tappingDrillMm }) => {
  test('has its pitch diameter where its groove is half a pitch wide, its minor one where a quarter is left of the metal', () => {
    expect(pitchDiameterMm(majorMm, pitchMm)).toBeCloseTo(diameterWhereGrooveIs(1 / 2, majorMm, pitchMm), 9);
    expect(minorDiameterMm(majorMm, pitchMm)).toBeCloseTo(diameterWhereGrooveIs(3 / 4, majorMm, pitchMm), 9);
  });

  test('has the stress area of π/4·(d − 0.9382 P)², to the digits of that factor', () => {
    const short = (Math.PI / 4) * (majorMm - 0.9382 * pitchMm) ** 2;
    expect(Math.abs(stressAreaMm2(majorMm, pitchMm) / short - 1)).toBeLessThan(1e-5);
  });

  test('has a tolerance of its minor diameter within a preferred number of the formula of ISO 965-1 (from memory)', () => {
    const byFormula = pitchMm < 1 ? 433 * pitchMm - 190 * pitchMm ** 1.22 : 230 * pitchMm ** 0.7;
    const um = Math.round(((largestMinor6HMm(majorMm, pitchMm) ?? 0) - minorDiameterMm(majorMm, pitchMm)) * 1000);
    const above = preferredUm.findIndex((preferred) => preferred >= byFormula);
    expect(preferredUm.slice(above - 1, above + 2)).toContain(um);
  });

  test('is drilled within its 6H limits', () => {
    expect(tappingDrillMm).toBeGreaterThanOrEqual(minorDiameterMm(majorMm, pitchMm));
    expect(tappingDrillMm).toBeLessThanOrEqual(largestMinor6HMm(majorMm, pitchMm) ?? 0);
  });
});

describe('unified threads (ASME B1.1, from memory)', () => {
  test.each(tradeCases.unifiedMinors.expected)(
    '$size-$perInch has a minor diameter of $leastIn to $mostIn in',
    ({ size, perInch, leastIn, mostIn }) => {
      const thread = unifiedThreads.find((t) => t.size === size && t.perInch === perInch);
      const { majorMm } = thread ?? { majorMm: Number.NaN };
      const leastMm = minorDiameterMm(majorMm, 25.4 / perInch);
      const { tolerance } = tradeCases.unifiedMinors;
      expect(Math.abs(leastMm / 25.4 - leastIn)).toBeLessThan(tolerance);
      expect(Math.abs((leastMm + minorTolerance2BMm(majorMm, 25.4 / perInch)) / 25.4 - mostIn)).toBeLessThan(tolerance);
    },
  );

  const overLimitMm = (thread: UnifiedThread): number =>
    unifiedDrillMm(thread) -
    minorDiameterMm(thread.majorMm, 25.4 / thread.perInch) -
    minorTolerance2BMm(thread.majorMm, 25.4 / thread.perInch);

  test.each(unifiedThreads)('$size-$perInch is drilled within its 2B limits by $drill, or 0.02 mm over', (thread) => {
    expect(unifiedDrillMm(thread)).toBeGreaterThanOrEqual(minorDiameterMm(thread.majorMm, 25.4 / thread.perInch));
    expect(overLimitMm(thread)).toBeLessThan(0.02);
  });

  test('handbooks name a drill a hair over the 2B limit for 9/16-18 and 5/8-18 alone (from memory)', () => {
    const over = unifiedThreads.filter((thread) => overLimitMm(thread) > 0);
    expect(over.map(({ size, perInch }) => `${size}-${perInch}`)).toEqual(['9/16-18', '5/8-18']);
  });

  test.each(unifiedThreads.filter(({ size }) => size.includes('/')))(
    '$size-$perInch is the size its designation says',
    ({ size, perInch, majorMm }) => {
      expect(parseThread(`${size}-${perInch}`)).toEqual({ majorMm, pitchMm: 25.4 / perInch });
    },
  );

  test.each(unifiedThreads.filter(({ size }) => size.startsWith('#')))(
    '$size is 0.060 in and 0.013 in a number (computed)',
    ({ size, majorMm }) => {
      expect(majorMm / 25.4).toBeCloseTo(0.06 + 0.013 * Number(size.slice(1)), 12);
    },
  );
});

describe('pipe threads (ISO 228, from memory)', () => {
  test.each(tradeCases.pipeMinors.expected)('G$size has a minor diameter of $minorMm mm', ({ size, minorMm }) => {
    const thread = pipeThreads.find((t) => t.size === size);
    const { majorMm, perInch } = thread ?? { majorMm: Number.NaN, perInch: 1 };
    const byHeight = majorMm - 2 * pipeThreadHeightMm(25.4 / perInch);
    expect(Math.abs(byHeight - minorMm)).toBeLessThan(tradeCases.pipeMinors.tolerance);
  });

  test('every figure of them but what is computed is from memory, and says so', () => {
    expect([pipeThreadSource.basis, pipeDrillSource.basis]).toEqual(['from memory', 'from memory']);
  });

  test('the height of a 55° thread is 0.6403 P (from memory of ISO 228)', () => {
    expect(pipeThreadHeightMm(1)).toBeCloseTo(0.640327, 6);
  });

  test.each(pipeThreads)('G$size is drilled within its limits, Rc$size smaller than that', (thread) => {
    const leastMm = thread.majorMm - 2 * pipeThreadHeightMm(25.4 / thread.perInch);
    expect(thread.drillMm).toBeGreaterThanOrEqual(leastMm);
    expect(thread.drillMm).toBeLessThanOrEqual(leastMm + thread.minorToleranceMm);
    expect(thread.taperDrillMm).toBeLessThan(leastMm);
    expect(thread.taperDrillMm).toBeGreaterThan(leastMm - pipeTaper * thread.usefulLengthMm);
    expect(thread.gaugeLengthMm).toBeLessThan(thread.usefulLengthMm);
  });
});
