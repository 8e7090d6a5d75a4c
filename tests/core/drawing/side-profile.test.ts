import { expect, test } from 'vitest';
import { stripsOf } from '../../../src/drawing/fit/side-profile.ts';
import { disc, outline } from '../../support/jobs.ts';

const heights = (strips: ReturnType<typeof stripsOf>) => strips.map(({ fromY, toY }) => [fromY, toY]);

test('two ribs on a wall show as strips, each to where it stands', () => {
  const wall = outline(
    [0, 0],
    [20, 0],
    [20, 10],
    [40, 10],
    [40, 18],
    [20, 18],
    [20, 50],
    [30, 50],
    [30, 58],
    [20, 58],
    [20, 80],
    [0, 80],
  );
  const strips = stripsOf([wall], 'right');
  expect(heights(strips)).toEqual([
    [0, 10],
    [10, 18],
    [18, 50],
    [50, 58],
    [58, 80],
  ]);
  expect(strips.map(({ reachMm }) => reachMm)).toEqual([20, 40, 20, 30, 20]);
});

test('the same wall from the other side is one plain strip', () => {
  const wall = outline([0, 0], [20, 0], [20, 10], [40, 10], [40, 18], [20, 18], [20, 80], [0, 80]);
  expect(heights(stripsOf([wall], 'left'))).toEqual([[0, 80]]);
});

test('one sees past between two bosses', () => {
  expect(heights(stripsOf([disc(0, 0, 5), disc(0, 30, 5)], 'right'))).toEqual([
    [-5, 5],
    [25, 35],
  ]);
});

test('a corner shows as an edge though nothing steps there', () => {
  const prow = outline([0, 0], [10, 0], [20, 10], [10, 20], [0, 20]);
  expect(heights(stripsOf([prow], 'right'))).toEqual([
    [0, 10],
    [10, 20],
  ]);
});
