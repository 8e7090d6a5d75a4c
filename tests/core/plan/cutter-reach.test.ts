import { expect, test } from 'vitest';
import { difference } from '../../../src/geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygons } from '../../../src/geometry/polygons/polygons.ts';
import { rectangle } from '../../../src/geometry/polygons/solid-near.ts';
import { drain, showing } from '../../../src/geometry/progress.ts';
import type { MetalLayer } from '../../../src/plan/bands/layers.ts';
import { unreached } from '../../../src/plan/cutter/cutter-reach.ts';

/** A ball of 6 mm cuts 5 mm into a wall, down to a floor 10 mm deep that is told in so many layers. */
const leftOver = (floors: number): MetalLayer[] => {
  const piece = [rectangle({ minX: 0, maxX: 40, minY: 0, maxY: 5 })];
  const floor = [rectangle({ minX: 0, maxX: 40, minY: -20, maxY: 5 })];
  const beside = [rectangle({ minX: 0, maxX: 40, minY: -20, maxY: 0 })];
  const barring = Array.from({ length: floors }, (_, i) => ({
    depth: { fromMm: 10 + (20 * i) / floors, toMm: 10 + (20 * (i + 1)) / floors },
    metal: floor,
  }));
  return drain(
    showing(
      { step: 'reach', done: 0, of: 1 },
      unreached(piece, { fromMm: 0, toMm: 10 }, { beside, barring }, { nose: 'ball', radiusMm: 6 }),
    ),
  );
};

const metalAt = (layers: readonly MetalLayer[], mm: number): Polygons =>
  layers.filter(({ depth }) => depth.fromMm <= mm && mm < depth.toMm).flatMap(({ metal }) => metal);

/** Of the wall beside the floor, what no ball gets at that keeps clear of both, from a formula: it rests 6 mm above the one and off the other. */
const surelyLeft = (mm: number): Polygons => [
  rectangle({ minX: 12, maxX: 28, minY: 0, maxY: 6 - Math.sqrt(36 - (mm - 4.1) ** 2) }),
];

const depthsMm = Array.from({ length: 55 }, (_, i) => 4.5 + i / 10);

test.each([1, 2, 5, 40])('a floor told in %i layers has all of its fillet left', (floors) => {
  const left = leftOver(floors);
  for (const mm of depthsMm) expect(areaMm2(difference(surelyLeft(mm), metalAt(left, mm)))).toBeLessThan(0.1);
});

test.each([1, 40])('above where the ball touches a floor of %i layers nothing is left', (floors) => {
  expect(metalAt(leftOver(floors), 3.9)).toEqual([]);
});

test('forty layers are looked at in no more than 16 ranges of depth', () => {
  expect(leftOver(40).length).toBeLessThanOrEqual(16);
});
