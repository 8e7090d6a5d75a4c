import { describe, expect, it } from 'vitest';
import { loopFaults } from '../../../src/geometry/plane/loop-faults.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { difference } from '../../../src/geometry/polygons/polygon-engine.ts';
import { areaMm2, loopsOf, type Polygon, type Polygons } from '../../../src/geometry/polygons/polygons.ts';
import { soundPolygons } from '../../../src/geometry/polygons/sound-polygons.ts';

const polygon = (...points: readonly (readonly [number, number])[]): Polygon => points.map(([x, y]) => vec(x, y));
const square = (x: number, y: number, side: number): Polygon =>
  polygon([x, y], [x + side, y], [x + side, y + side], [x, y + side]);

/** What an engine may hand on, and no part file may hold. */
const meeting: readonly { name: string; polygons: Polygons }[] = [
  { name: 'two squares that share a corner', polygons: [square(0, 0, 1), square(1, 1, 1)] },
  { name: 'a corner on a side', polygons: [square(0, 0, 2), polygon([2, 1], [3, 0.5], [3, 1.5])] },
  { name: 'a hole that touches the outline', polygons: [square(0, 0, 4), polygon([0, 2], [1, 3], [1, 1])] },
  {
    name: 'an outline that comes to a vertex again',
    polygons: [polygon([0, 0], [2, 0], [1, 1], [2, 2], [0, 2], [1, 1])],
  },
];

describe('outlines that meet are mended', () => {
  it.each(meeting)('$name', ({ polygons }) => {
    expect(loopFaults(loopsOf(polygons))).not.toEqual([]);
    for (const side of ['outside', 'inside'] as const) {
      const { polygons: sound, boundMm } = soundPolygons(polygons, side);
      expect(loopFaults(loopsOf(sound))).toEqual([]);
      expect(boundMm).toBeLessThan(1e-4);
      const [lost, added] = [areaMm2(difference(polygons, sound)), areaMm2(difference(sound, polygons))];
      expect(side === 'outside' ? lost : added).toBeLessThan(1e-12);
      expect(Math.abs(areaMm2(sound) - areaMm2(polygons))).toBeLessThan(1e-8);
    }
  });

  it('and sound ones are left as they are', () => {
    const polygons = [square(0, 0, 4), square(1, 1, 1).toReversed(), square(10, 0, 1)];
    expect(soundPolygons(polygons, 'outside')).toEqual({ polygons, boundMm: 0 });
  });

  it('slivers go where that errs to the asked side', () => {
    const sliver = polygon([10, 0], [20, 0], [10, 1e-6]);
    expect(soundPolygons([square(0, 0, 4), sliver], 'inside').polygons).toEqual([square(0, 0, 4)]);
    expect(soundPolygons([square(0, 0, 4), sliver], 'outside').polygons).toHaveLength(2);
    const slit = polygon([1, 1], [1, 1.000001], [3, 1]);
    expect(soundPolygons([square(0, 0, 4), slit], 'outside').polygons).toEqual([square(0, 0, 4)]);
    expect(soundPolygons([square(0, 0, 4), slit], 'inside').polygons).toHaveLength(2);
  });
});
