import { describe, expect, test } from 'vitest';
import { largestMinor6HMm, parseThread } from '../../../src/trade/threads.ts';

describe('a thread designation', () => {
  test.each([
    ['M12x1.75', 12, 1.75],
    ['M12×1.75', 12, 1.75],
    ['m12 X 1.5', 12, 1.5],
    ['M12*1.25', 12, 1.25],
    ['M12x1.75-6H', 12, 1.75],
    ['M12', 12, 1.75],
    [' M8 ', 8, 1.25],
    ['M13', 13, null],
    ['M3.5', 3.5, 0.6],
    ['M27', 27, null],
    ['1/2-13', 12.7, 25.4 / 13],
    ['7/16-14 UNC', 11.1125, 25.4 / 14],
    ['3/8', 9.525, null],
  ])('%s is read', (designation, majorMm, pitchMm) => {
    const thread = parseThread(designation);
    expect(thread?.majorMm).toBeCloseTo(majorMm, 12);
    expect(thread?.pitchMm).toBe(pitchMm);
  });

  test.each(['', 'M', '12', 'M12x', 'M0', 'M12x0', 'M12x7', 'Mx1.5', 'G1/2', '1/0', '0/8', 'M-12', 'M1e9', '3/8-1'])(
    '%j is not taken for a thread',
    (designation) => {
      expect(parseThread(designation)).toBeNull();
    },
  );
});

test('a 6H limit is not invented for a pitch whose tolerance is not listed', () => {
  expect(largestMinor6HMm(36, 4)).toBeNull();
});
