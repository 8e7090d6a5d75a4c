import { expect, test } from 'vitest';
import { hatchSegments } from '../../../src/drawing/scene/hatch.ts';
import type { Region } from '../../../src/geometry/plane/loop.ts';
import { distance, vec } from '../../../src/geometry/plane/vec.ts';
import { box, disc, outline } from '../../support/jobs.ts';

const lengthOf = (region: Region, angleRad: number, pitchMm: number): number =>
  hatchSegments(region, angleRad, pitchMm).reduce((sum, [a, b]) => sum + distance(a, b), 0);

// Cavalieri: lines a pitch apart, together as long as the area divided by the pitch
const regions: [string, Region, number][] = [
  ['a disc', [disc(3, -7, 20)], Math.PI * 400],
  ['a ring', [disc(0, 0, 20), disc(2, 0, 10)], Math.PI * 300],
  ['a square', [box(0, 0, 30, 30)], 900],
  ['a half disc', [outline([-10, 0, 0], [10, 0, 1])], Math.PI * 50],
  ['two discs', [disc(0, 0, 5), disc(100, 0, 5)], Math.PI * 50],
];
test.each(regions)('hatching of %s covers its area at any angle', (_, region, areaMm2) => {
  for (const angle of [0, Math.PI / 4, -Math.PI / 4, 1]) {
    expect(lengthOf(region, angle, 0.05) * 0.05).toBeCloseTo(areaMm2, areaMm2 > 500 ? -0.5 : 0);
  }
});

test('hatching of a disc ends on its circle exactly', () => {
  for (const segment of hatchSegments([disc(3, -7, 20)], Math.PI / 4, 1)) {
    for (const end of segment) expect(distance(end, vec(3, -7))).toBeCloseTo(20, 9);
  }
});

test('nothing has no hatching', () => {
  expect(hatchSegments([], Math.PI / 4, 1)).toEqual([]);
});
