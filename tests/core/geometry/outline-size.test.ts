import { describe, expect, it } from 'vitest';
import { circleLoop, type Loop, polygonLoop } from '../../../src/geometry/plane/loop.ts';
import { outlineSize } from '../../../src/geometry/plane/outline-size.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';

// closed forms
const slot = (bulge: number): Loop => ({
  kind: 'path',
  vertices: [
    { x: -20, y: -5, bulge: 0 },
    { x: 20, y: -5, bulge },
    { x: 20, y: 5, bulge: 0 },
    { x: -20, y: 5, bulge },
  ],
});

describe('the size of outlines', () => {
  it('a circle is as wide as high, 2πr round', () => {
    const { width, height, round } = outlineSize([circleLoop(vec(3, -7), 25)]);
    expect([width, height]).toEqual([50, 50]);
    expect(round).toBeCloseTo(50 * Math.PI, 9);
  });

  it('a slot reaches out with its rounded ends, or in with hollow ones', () => {
    const out = outlineSize([slot(1)]);
    expect(out.width).toBeCloseTo(50, 9);
    expect(out.height).toBeCloseTo(10, 9);
    expect(out.round).toBeCloseTo(80 + 10 * Math.PI, 9);
    const hollow = outlineSize([slot(-1)]);
    expect(hollow.width).toBeCloseTo(40, 9);
    expect(hollow.round).toBeCloseTo(80 + 10 * Math.PI, 9);
  });

  it('a hole adds to the length round and not to the size', () => {
    const plate = polygonLoop([vec(0, 0), vec(80, 0), vec(80, 60), vec(0, 60)]);
    const { width, height, round } = outlineSize([plate, circleLoop(vec(40, 30), 10)]);
    expect([width, height]).toEqual([80, 60]);
    expect(round).toBeCloseTo(280 + 20 * Math.PI, 9);
  });
});
