import { describe, expect, test } from 'vitest';
import { distanceFaults, intervalFaults, passageOf } from '../support/judge-passage.ts';
import { Random } from '../support/random.ts';
import { atGap, randomSetting } from '../support/random-settings.ts';

// Reference: Lipschitz branch and bound over time, brute force over edges; see tests/support/oracles.
const pairs = 100;
const seeds = Array.from({ length: pairs }, (_, i) => i + 1);

describe('a passage of two random solids', () => {
  test('is never nearer and never farther than proved by brute force, and its witnesses hold', () => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      return distanceFaults(setting, passageOf(setting), 1e-3).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test('overlaps just when it is told to', () => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      const answer = passageOf(setting);
      return answer.state === 'clear'
        ? []
        : intervalFaults(setting, answer, 10).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });

  test.each([1e-3, 1e-5, 0, -1e-5, -1e-3])('brought to a gap of %f mm is told so', (gapMm) => {
    const wrong = seeds.flatMap((seed) => {
      const setting = randomSetting(new Random(seed));
      const { state, nearest, distanceMm } = passageOf(setting);
      if (state !== 'clear' || !nearest || distanceMm === null) return [];
      const near = atGap(setting, nearest, distanceMm, gapMm);
      return nearFaults(near, gapMm).map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(wrong).toEqual([]);
  });
});

function nearFaults(near: ReturnType<typeof randomSetting>, gapMm: number): string[] {
  const answer = passageOf(near);
  if (gapMm < 0) return intervalFaults(near, answer, 10);
  const right = answer.state === (gapMm > 0 ? 'clear' : 'touches') && Math.abs((answer.distanceMm ?? 1) - gapMm) < 1e-8;
  return right ? [] : [`${answer.state} ${answer.distanceMm}`];
}
