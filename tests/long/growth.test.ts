import { describe, expect, test } from 'vitest';
import { type Motion, still } from '../../src/geometry/motion/motion.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { doublings, growthPairs } from '../bench/growth.ts';
import { type Pair, turnOf } from '../bench/outlines.ts';
import { pairEvaluations } from '../bench/pair-evaluations.ts';

/** Twice the edges may cost twice the pairs and a little over; comparing all with all would cost four times. */
const mostPerDoubling = 2.3;

const questions: readonly [name: string, motionOf: (pair: Pair) => Motion][] = [
  ['the clearance over 15°', turnOf],
  ['the least distance at a position', () => still],
];

describe.each(questions)('pairs looked at for %s', (_, motionOf) => {
  test.each(growthPairs.map((make) => [make(4).name, make] as const))(
    `grow by no more than ${mostPerDoubling} per doubling from 1,000 to 256,000 edges: %s`,
    (_name, make) => {
      const counts = doublings.map((edges) => {
        const pair = make(edges);
        return pairEvaluations(buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving), motionOf(pair));
      });
      const growth = counts.slice(1).map((count, i) => count / (counts[i] as number));
      expect(Math.max(...growth), `pairs looked at: ${counts.join(', ')}`).toBeLessThanOrEqual(mostPerDoubling);
    },
  );
});
