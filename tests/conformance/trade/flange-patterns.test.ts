import { describe, expect, test } from 'vitest';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { type HousingFlange, holeCentres, housingFlanges } from '../../../src/trade/flange-patterns.ts';
import { parseThread } from '../../../src/trade/threads.ts';

const flange = (number: HousingFlange['number']): HousingFlange => {
  const found = housingFlanges.find((f) => f.number === number);
  if (found === undefined) throw new Error(`no flange ${number}`);
  return found;
};

describe('SAE J617 flanges (looked up in catalogue extracts; mm = inch × 25.4 computed)', () => {
  test.each([
    ['00', 787.4, 850.9],
    ['0', 647.7, 679.45],
    ['1/2', 584.2, 619.125],
    ['1', 511.175, 530.225],
    ['2', 447.675, 466.725],
    ['3', 409.575, 428.625],
    ['4', 361.95, 381],
    ['5', 314.325, 333.375],
    ['6', 266.7, 285.75],
  ] as const)('No. %s: pilot bore %f, bolt circle %f', (number, pilotBoreMm, boltCircleMm) => {
    expect(flange(number).pilotBoreMm).toBeCloseTo(pilotBoreMm, 9);
    expect(flange(number).boltCircleMm).toBeCloseTo(boltCircleMm, 9);
  });

  test('bore, bolt circle and outside diameter grow in that order, and every thread can be read', () => {
    for (const { pilotBoreMm, boltCircleMm, outsideMm, thread } of housingFlanges) {
      expect(pilotBoreMm).toBeLessThan(boltCircleMm);
      expect(boltCircleMm).toBeLessThan(outsideMm);
      expect(parseThread(thread)).not.toBeNull();
    }
  });

  test.each([
    ['5', 22.5, 'looked up'],
    ['3', 15, 'computed: equally each side of the axes, ISO 7648'],
    ['0', 11.25, 'computed: equally each side of the axes, ISO 7648'],
  ] as const)('the first hole of No. %s stands %f° from the vertical (%s)', (number, deg, _source) => {
    const [first] = holeCentres(flange(number));
    expect((Math.atan2(first?.x ?? 0, first?.y ?? 0) * 180) / Math.PI).toBeCloseTo(deg, 9);
  });
});

describe('the twelve holes of SAE J617 No. 3 (computed)', () => {
  const holes = holeCentres(flange('3'));
  // half a unit of the last digit printed
  const printed = 0.0005;

  test('stand at (±55.468, ±207.010), (±151.542, ±151.542), (±207.010, ±55.468): R = 214.3125 at 15°, 45°, 75°', () => {
    const corners = [
      [55.468, 207.01],
      [151.542, 151.542],
      [207.01, 55.468],
    ] as const;
    const expected = corners.flatMap(([x, y]) => [vec(x, y), vec(-x, y), vec(x, -y), vec(-x, -y)]);
    for (const p of expected) expect(Math.min(...holes.map((h) => distance(h, p)))).toBeLessThan(Math.SQRT2 * printed);
  });

  test('are 110.94 apart, each from the next', () => {
    for (const [i, hole] of holes.entries()) {
      const next = holes[(i + 1) % holes.length] ?? hole;
      expect(Math.abs(Math.hypot(next.x - hole.x, next.y - hole.y) - 110.94)).toBeLessThan(0.005);
    }
  });
});
