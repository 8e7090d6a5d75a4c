import { describe, expect, test } from 'vitest';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { type HousingFlange, holeCentres, housingFlanges } from '../../../src/trade/flange-patterns.ts';
import { flywheelPatterns } from '../../../src/trade/flywheel-patterns.ts';
import { parseThread } from '../../../src/trade/threads.ts';
import { titled } from '../../support/titled.ts';
import { tradeCases } from './trade-cases.ts';

const flange = (number: HousingFlange['number']): HousingFlange => {
  const found = housingFlanges.find((f) => f.number === number);
  if (found === undefined) throw new Error(`no flange ${number}`);
  return found;
};

describe('SAE J617 flanges (looked up in catalogue extracts; mm = inch × 25.4 computed)', () => {
  const { flanges, firstHoles } = tradeCases;
  test.each(
    titled(flanges.expected, (f) => `No. ${f.number}: pilot bore ${f.pilotBoreMm}, bolt circle ${f.boltCircleMm}`),
  )('%s', (_, expected) => {
    const { pilotBoreMm, boltCircleMm } = flange(expected.number);
    expect(Math.abs(pilotBoreMm - expected.pilotBoreMm)).toBeLessThan(flanges.tolerance);
    expect(Math.abs(boltCircleMm - expected.boltCircleMm)).toBeLessThan(flanges.tolerance);
  });

  test('bore, bolt circle and outside diameter grow in that order, and every thread can be read', () => {
    for (const { pilotBoreMm, boltCircleMm, outsideMm, thread } of housingFlanges) {
      expect(pilotBoreMm).toBeLessThan(boltCircleMm);
      expect(boltCircleMm).toBeLessThan(outsideMm);
      expect(parseThread(thread)).not.toBeNull();
    }
  });

  test.each(
    titled(
      firstHoles.expected,
      (f) => `the first hole of No. ${f.number} stands ${f.degFromVertical}° from the vertical (${f.source})`,
    ),
  )('%s', (_, { number, degFromVertical }) => {
    const [first] = holeCentres(flange(number));
    const deg = (Math.atan2(first?.x ?? 0, first?.y ?? 0) * 180) / Math.PI;
    expect(Math.abs(deg - degFromVertical)).toBeLessThan(firstHoles.tolerance);
  });
});

describe('the twelve holes of SAE J617 No. 3 (computed)', () => {
  const { holeCentres: centres, holePitches: pitches } = tradeCases;

  test.each(titled(centres.expected))('%s', (_, { number, centres: expected }) => {
    const holes = holeCentres(flange(number));
    for (const [x, y] of expected)
      expect(Math.min(...holes.map((h) => distance(h, vec(x, y))))).toBeLessThan(centres.tolerance);
  });

  test.each(titled(pitches.expected))('%s', (_, { number, pitchMm }) => {
    const holes = holeCentres(flange(number));
    for (const [i, hole] of holes.entries()) {
      const next = holes[(i + 1) % holes.length] ?? hole;
      expect(Math.abs(distance(hole, next) - pitchMm)).toBeLessThan(pitches.tolerance);
    }
  });
});

describe('flywheels of SAE J620 (from memory)', () => {
  test('a clutch bolts within its pilot bore, sizes grow, and every thread can be read', () => {
    for (const [i, { pilotBoreMm, boltCircleMm, thread, source }] of flywheelPatterns.entries()) {
      expect(boltCircleMm).toBeLessThan(pilotBoreMm);
      expect(pilotBoreMm).toBeGreaterThan(flywheelPatterns[i - 1]?.pilotBoreMm ?? 0);
      expect(parseThread(thread)).not.toBeNull();
      expect(source.basis).toBe('from memory');
    }
  });

  test('the flywheel lies the deeper in its housing the smaller its clutch, from the 8 in one on', () => {
    const depths = flywheelPatterns.slice(2).map(({ faceDepthMm }) => faceDepthMm);
    expect(depths).toEqual([...depths].sort((a, b) => b - a));
  });
});
