import { describe, expect, it } from 'vitest';
import { alongEdge, apart, bulgeThrough, circleThrough, nearestAlong, type XY } from '../../../viewer/job/arc.ts';

const onCircle = (degrees: number, radius = 5, [x, y]: XY = [3, -2]): XY => [
  x + radius * Math.cos((degrees * Math.PI) / 180),
  y + radius * Math.sin((degrees * Math.PI) / 180),
];

describe('three points', () => {
  it('lie on the circle that is found through them', () => {
    const found = circleThrough(onCircle(10), onCircle(75), onCircle(200));
    expect(found?.circle[0]).toBeCloseTo(3, 12);
    expect(found?.circle[1]).toBeCloseTo(-2, 12);
    expect(found?.radius).toBeCloseTo(5, 12);
  });

  it('at the corners of a 3-4-5 triangle lie on a circle of half the long side', () => {
    expect(circleThrough([0, 0], [4, 0], [0, 3])).toEqual({ circle: [2, 1.5], radius: 2.5 });
  });

  it.each<[string, XY, XY, XY]>([
    ['in a line', [0, 0], [1, 1], [7, 7]],
    ['of which two are the same', [0, 0], [0, 0], [5, 1]],
    ['that are all the same', [2, 2], [2, 2], [2, 2]],
  ])('%s make no circle', (_, a, b, c) => expect(circleThrough(a, b, c)).toBeNull());
});

describe('the arc from one point over another to a third', () => {
  // bulge = tan of a quarter of the arc's angle
  it.each([
    [0, 30, 60],
    [0, 90, 180],
    [0, 100, 270],
    [0, 340, 350],
    [60, 30, 0],
    [350, 20, 0],
  ])('from %d° over %d° to %d° has the bulge of its angle', (from, over, to) => {
    const bulge = bulgeThrough(onCircle(from), onCircle(over), onCircle(to));
    expect(bulge).toBeCloseTo(Math.tan((((to - from) / 4) * Math.PI) / 180), 10);
  });

  it('is straight where the second point lies between the others', () => {
    expect(Math.abs(bulgeThrough([0, 0], [1, 2], [3, 6]) ?? 1)).toBeLessThan(1e-12);
  });

  it('is none where the second point lies in line beyond them, or on one of them', () => {
    expect(bulgeThrough([0, 0], [9, 0], [3, 0])).toBeNull();
    expect(bulgeThrough([0, 0], [0, 0], [3, 0])).toBeNull();
    expect(bulgeThrough([0, 0], [3, 0], [3, 0])).toBeNull();
  });
});

describe('an edge', () => {
  it('has its half-way point at the top of the arc', () => {
    const [x, y] = alongEdge([1, 0], [-1, 0], 1, 0.5);
    expect([x, y]).toEqual([expect.closeTo(0, 12), expect.closeTo(1, 12)]);
  });

  it.each([
    ['half a circle', 1],
    ['the same, clockwise', -1],
    ['a third of a circle', Math.tan(Math.PI / 6)],
    ['more than half', 2],
    ['a straight edge', 0],
  ])('finds how far along it a point lies: %s', (_, bulge) => {
    for (const t of [0.1, 0.5, 0.8]) {
      expect(nearestAlong([4, 1], [-2, 3], bulge, alongEdge([4, 1], [-2, 3], bulge, t))).toBeCloseTo(t, 10);
    }
  });

  it('is nearest with an end to a point that no square from it reaches', () => {
    expect(nearestAlong([1, 0], [-1, 0], 1, [3, -2])).toBe(0);
    expect(nearestAlong([1, 0], [-1, 0], 1, [-3, -2])).toBe(1);
    expect(nearestAlong([0, 0], [4, 0], 0, [9, 1])).toBe(1);
    expect(apart([0, 0], [3, 4])).toBe(5);
  });
});
