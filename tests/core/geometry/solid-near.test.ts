import { describe, expect, it } from 'vitest';
import { buildOutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import { rayCrossings } from '../../../src/geometry/motion/ray-crossings.ts';
import type { Box } from '../../../src/geometry/plane/edge-box.ts';
import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import { intersection } from '../../../src/geometry/polygons/polygon-engine.ts';
import { loopsOf, type Polygon, type Polygons } from '../../../src/geometry/polygons/polygons.ts';
import { solidNear } from '../../../src/geometry/polygons/solid-near.ts';
import { Random } from '../../support/random.ts';

const rough = (random: Random, radiusMm: number, count: number): Polygon =>
  Array.from({ length: count }, (_, i) =>
    polar(vec(0, 0), radiusMm + random.between(-1, 1), (2 * Math.PI * i) / count),
  );

const ring = (random: Random): Polygons => [rough(random, 50, 300), rough(random, 40, 300).toReversed()];

function someBox(random: Random): Box {
  const [x, y] = [random.between(-60, 60), random.between(-60, 60)];
  return { minX: x, minY: y, maxX: x + random.between(1, 40), maxY: y + random.between(1, 40) };
}

const squareOf = ({ minX, minY, maxX, maxY }: Box): Polygons => [
  [vec(minX, minY), vec(maxX, minY), vec(maxX, maxY), vec(minX, maxY)],
];

describe('a solid told by what lies about a box', () => {
  it('is the very same in the box as the whole, in fewer points', () => {
    const random = new Random(7);
    for (let i = 0; i < 200; i++) {
      const [whole, box] = [ring(random), someBox(random)];
      const near = solidNear(whole, box);
      expect(intersection(near, squareOf(box))).toEqual(intersection(whole, squareOf(box)));
      expect(near.flat().length).toBeLessThan(whole.flat().length);
    }
  });
});

describe('a ray', () => {
  it('crosses a square ring where its sides are, each once', () => {
    const square = (half: number): Polygon => [vec(-half, -half), vec(half, -half), vec(half, half), vec(-half, half)];
    const tree = buildOutlineTree(loopsOf([square(5), square(3).toReversed()]));
    expect(rayCrossings(tree, vec(0, 1), vec(1, 0)).sort()).toEqual([3, 5]);
    expect(rayCrossings(tree, vec(-10, 1), vec(1, 0)).sort((a, b) => a - b)).toEqual([5, 7, 13, 15]);
    // along a diagonal, through corners that belong to one side each
    const d = Math.SQRT1_2;
    const [inner, outer, ...more] = rayCrossings(tree, vec(0, 0), vec(d, d)).sort((a, b) => a - b);
    expect(inner).toBeCloseTo(3 * Math.SQRT2, 12);
    expect(outer).toBeCloseTo(5 * Math.SQRT2, 12);
    expect(more).toEqual([]);
  });

  it('that misses crosses nothing, nor one through nothing', () => {
    const tree = buildOutlineTree(loopsOf([[vec(1, 1), vec(2, 1), vec(2, 2)]]));
    expect(rayCrossings(tree, vec(0, 0), vec(-1, 0))).toEqual([]);
    expect(rayCrossings(buildOutlineTree([]), vec(0, 0), vec(1, 0))).toEqual([]);
  });
});
