import { expect, test } from 'vitest';
import { nearestOnOutline } from '../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { Random } from '../support/random.ts';
import { castingPair } from './castings/casting-pair.ts';
import { jointOfFiles } from './joints.ts';
import { traced } from './traced.ts';

test('an outline is traced within the stated error 95 times in a hundred, but for sections that are wrong', () => {
  const errorMm = 1;
  const offsMm: number[] = [];
  for (let seed = 1; seed <= 60; seed++) {
    const { fit, fixed, moving } = castingPair('ribs', seed);
    const { part, wrong } = traced(fixed, errorMm, new Random(seed));
    const truth = jointOfFiles(fit, fixed, moving).fixed;
    for (const [i, section] of jointOfFiles(fit, part, moving).fixed.sections.entries()) {
      if (wrong.includes(section.id)) continue;
      const outline = buildOutlineTree(truth.sections[i]?.loops ?? []);
      for (const loop of section.loops)
        if (loop.kind === 'path') offsMm.push(...loop.vertices.map((at) => nearestOnOutline(outline, at).distanceMm));
    }
  }
  const within = offsMm.filter((mm) => mm <= errorMm).length / offsMm.length;
  // errors go together along a section: two sections each of sixty parts say no more than some hundred places would
  expect(within).toBeGreaterThan(0.9);
  expect(within).toBeLessThan(0.99);
});
