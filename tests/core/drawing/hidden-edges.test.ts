import { expect, test } from 'vitest';
import { partHidden } from '../../../src/drawing/fit/hidden-edges.ts';
import type { Edge } from '../../../src/geometry/plane/edge.ts';
import { distance } from '../../../src/geometry/plane/vec.ts';
import { box, disc } from '../../support/jobs.ts';

const lengthOf = (edges: readonly Edge[]): number =>
  edges.reduce(
    (sum, edge) => sum + (edge.kind === 'line' ? distance(edge.a, edge.b) : edge.radius * Math.abs(edge.sweepRad)),
    0,
  );

test('of a square half behind another, half is hidden', () => {
  const { seen, hidden } = partHidden([box(0, 0, 10, 10)], [[box(5, -1, 20, 11)]]);
  expect(lengthOf(hidden)).toBeCloseTo(20, 9);
  expect(lengthOf(seen)).toBeCloseTo(20, 9);
});

test('of a circle behind a half plane through its centre, half is hidden', () => {
  const { seen, hidden } = partHidden([disc(0, 0, 10)], [[box(-50, 0, 50, 50)]]);
  expect(lengthOf(hidden)).toBeCloseTo(10 * Math.PI, 9);
  expect(lengthOf(seen)).toBeCloseTo(10 * Math.PI, 9);
});

test('two circles hide as much of each other as the two-circle formula says', () => {
  // radii 10, centres 12 apart: the hidden arc spans 2·acos(6/10)
  const { hidden } = partHidden([disc(0, 0, 10)], [[disc(12, 0, 10)]]);
  expect(lengthOf(hidden)).toBeCloseTo(20 * Math.acos(0.6), 9);
});

test('what shows through a bore is seen', () => {
  const { hidden } = partHidden([disc(0, 0, 3)], [[disc(0, 0, 10), disc(0, 0, 5)]]);
  expect(hidden).toEqual([]);
});

test('behind several sections each piece is hidden once', () => {
  const { seen, hidden } = partHidden([box(0, 0, 10, 10)], [[box(5, -1, 20, 11)], [box(2, -1, 20, 11)]]);
  expect(lengthOf(hidden)).toBeCloseTo(26, 9);
  expect(lengthOf([...seen, ...hidden])).toBeCloseTo(40, 9);
});
