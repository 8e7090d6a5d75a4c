import { describe, expect, test } from 'vitest';
import { distanceFaults, intervalFaults, passageOf } from '../support/judge-passage.ts';
import { Random } from '../support/random.ts';
import { atGap, randomSetting } from '../support/random-settings.ts';

// Reference: Lipschitz branch and bound over time, brute force over edges; see tests/support/oracles.
const pairs = 2500;
const firstSeed = 1_000_000;
const seeds = Array.from({ length: pairs }, (_, i) => firstSeed + i);

describe(`passages of ${pairs} random pairs`, () => {
  test('are never nearer and never farther than proved by brute force, and their witnesses hold', () => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      return distanceFaults(setting, passageOf(setting), 1e-4).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test('overlap just when they are told to', () => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      const answer = passageOf(setting);
      return answer.state === 'clear'
        ? []
        : intervalFaults(setting, answer, 40).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each([-1e-2, -1e-3, -1e-4])('pressed %f mm into one another overlap just when they are told to', (gapMm) => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      const { state, nearest, distanceMm } = passageOf(setting);
      if (state !== 'clear' || !nearest || distanceMm === null) return [];
      const near = atGap(setting, nearest, distanceMm, gapMm);
      return intervalFaults(near, passageOf(near), 20).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each([1e-3, 1e-4, 1e-5, 0])('brought to a gap of %f mm are that far apart', (gapMm) => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      const { state, nearest, distanceMm } = passageOf(setting);
      if (state !== 'clear' || !nearest || distanceMm === null) return [];
      const answer = passageOf(atGap(setting, nearest, distanceMm, gapMm));
      const right =
        answer.state === (gapMm > 0 ? 'clear' : 'touches') && Math.abs((answer.distanceMm ?? 1) - gapMm) < 1e-8;
      return right ? [] : [`seed ${seed}: ${answer.state} ${answer.distanceMm}`];
    });
    expect(wrong).toEqual([]);
  });
});
