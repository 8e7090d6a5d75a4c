import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '../../../src/drawing/scene/callouts.ts';

const stack = fc.array(
  fc.record({
    y: fc.double({ min: -500, max: 500, noNaN: true }),
    height: fc.double({ min: 1, max: 30, noNaN: true }),
  }),
  {
    maxLength: 20,
  },
);

test('labels that are apart stay where they point', () => {
  expect(spread([100, 50, 0], [10, 10, 10])).toEqual([100, 50, 0]);
});

test('two labels at one height move apart equally', () => {
  expect(spread([0, 0], [10, 10])).toEqual([5, -5]);
});

test('labels keep their order, never overlap, and as a whole stay where they were wanted', () => {
  fc.assert(
    fc.property(stack, (boxes) => {
      const wanted = boxes.map(({ y }) => y).sort((a, b) => b - a);
      const heights = boxes.map(({ height }) => height);
      const placed = spread(wanted, heights);
      for (let i = 1; i < placed.length; i++) {
        const room = (placed[i - 1] as number) - (placed[i] as number);
        expect(room).toBeGreaterThan(((heights[i - 1] as number) + (heights[i] as number)) / 2 - 1e-9);
      }
      const drift = placed.reduce((sum, y, i) => sum + y - (wanted[i] as number), 0);
      expect(Math.abs(drift)).toBeLessThan(1e-6);
    }),
  );
});
