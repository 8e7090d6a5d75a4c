import { describe, expect, test } from 'vitest';
import { distanceFaults, intervalFaults, passageOf } from '../support/judge-passage.ts';
import { Random } from '../support/random.ts';
import { atGap, randomSetting, type Setting } from '../support/random-settings.ts';
import { remembered } from '../support/remembered.ts';

// Reference: Lipschitz branch and bound over time, brute force over edges; see tests/support/oracles.
const pairs = 2500;
const firstSeed = 1_000_000;
const seeds = Array.from({ length: pairs }, (_, i) => firstSeed + i);

const settingOf = (seed: number): Setting => randomSetting(new Random(seed));
const answerTo = remembered((seed: number) => passageOf(settingOf(seed)));

describe(`passages of ${pairs} random pairs`, () => {
  test('are never nearer and never farther than proved by brute force, and their witnesses hold', () => {
    const wrong = seeds.flatMap((seed) => {
      return distanceFaults(settingOf(seed), answerTo(seed), 1e-4).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test('overlap just when they are told to', () => {
    const wrong = seeds.flatMap((seed) => {
      const answer = answerTo(seed);
      return answer.state === 'clear'
        ? []
        : intervalFaults(settingOf(seed), answer, 40).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each([-1e-2, -1e-3, -1e-4])('pressed %f mm into one another overlap just when they are told to', (gapMm) => {
    const wrong = seeds.flatMap((seed) => {
      const { state, nearest, distanceMm } = answerTo(seed);
      if (state !== 'clear' || !nearest || distanceMm === null) return [];
      const near = atGap(settingOf(seed), nearest, distanceMm, gapMm);
      return intervalFaults(near, passageOf(near), 20).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each([1e-3, 1e-4, 1e-5, 0])('brought to a gap of %f mm are that far apart', (gapMm) => {
    const wrong = seeds.flatMap((seed) => {
      const { state, nearest, distanceMm } = answerTo(seed);
      if (state !== 'clear' || !nearest || distanceMm === null) return [];
      const answer = passageOf(atGap(settingOf(seed), nearest, distanceMm, gapMm));
      const right =
        answer.state === (gapMm > 0 ? 'clear' : 'touches') && Math.abs((answer.distanceMm ?? 1) - gapMm) < 1e-8;
      return right ? [] : [`seed ${seed}: ${answer.state} ${answer.distanceMm}`];
    });
    expect(wrong).toEqual([]);
  });
});
