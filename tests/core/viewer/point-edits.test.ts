import { describe, expect, it } from 'vitest';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { edgesOf } from '../../../src/geometry/plane/loop.ts';
import { outlineAreaMm2 } from '../../../src/geometry/polygons/metal-on-left.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import type { Points, XY } from '../../../viewer/job/arc.ts';
import { closedBehind } from '../../../viewer/job/closed-behind.ts';
import { featureLoop } from '../../../viewer/job/feature-loops.ts';
import {
  withBulge,
  withEdgeOver,
  withoutVertex,
  withStraightEdge,
  withVertexAt,
  withVertexOn,
} from '../../../viewer/job/point-edits.ts';

const area = (loop: LoopFile | null): number => (loop === null ? 0 : outlineAreaMm2(edgesOf(loopOf(loop, 1))));

const square: Points = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];
/** A square with half a disc on its right side. */
const withHalfDisc = withBulge(square, 1, 1);

describe('a point of an outline', () => {
  it('moves and leaves the arcs beside it with their angles', () => {
    expect(withVertexAt(withHalfDisc, 1, [5, -1])[1]).toEqual([5, -1, 1]);
  });

  it.each([0, 1, 3])('put on edge %i changes neither shape nor area', (edge) => {
    const more = withVertexOn(withHalfDisc, edge, [5, 3.5]);
    expect(more).toHaveLength(5);
    expect(area(more)).toBeCloseTo(16 + 2 * Math.PI, 8);
  });

  it('put on an arc and taken off again leaves the arc as it was', () => {
    const more = withVertexOn(withHalfDisc, 1, [5, 3.5]);
    expect(withoutVertex(more, 2)).toEqual(withHalfDisc);
  });

  it('taken off a corner leaves a straight edge', () => {
    expect(area(withoutVertex(square, 0))).toBe(8);
    expect(area(withoutVertex(square, 3))).toBe(8);
  });

  it('is the last but one that can be taken off', () => {
    expect(
      withoutVertex(
        [
          [0, 0],
          [4, 0],
          [4, 4],
        ],
        0,
      ),
    ).toBeNull();
    expect(
      withoutVertex(
        [
          [0, 0, 1],
          [4, 0],
        ],
        0,
      ),
    ).toBeNull();
  });
});

describe('an edge of an outline', () => {
  it('bends over a point, and the area grows by the segment', () => {
    expect(withEdgeOver(square, 1, [6, 2])).toEqual(withHalfDisc);
    expect(area(withEdgeOver(square, 1, [6, 2]))).toBeCloseTo(16 + 2 * Math.PI, 12);
  });

  it('straightens', () => expect(withStraightEdge(withHalfDisc, 1)).toEqual(square));

  it('stays as it is where no arc goes over the point', () => {
    expect(withEdgeOver(square, 0, [9, 0])).toEqual(square);
  });
});

describe('a feature', () => {
  const rib = { kind: 'rib', from: [10, 5], to: [40, 45], width: 8, endRadius: 0 } as const;

  it('is a rib of length times width, run anticlockwise', () => expect(area(featureLoop(rib))).toBeCloseTo(400, 9));

  it('is as wide as was said at either end of a rib that tapers', () => {
    const tapered = featureLoop({ ...rib, tipWidth: 6 });
    expect(area(tapered)).toBeCloseTo(350, 9);
    const [a, b, c, d] = tapered as unknown as [XY, XY, XY, XY];
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(8, 9);
    expect(Math.hypot(c[0] - d[0], c[1] - d[1])).toBeCloseTo(6, 9);
    expect(featureLoop({ ...rib, tipWidth: 6, endRadius: 1 })).toBeNull();
  });

  it.each([1, 2.5, 4])('loses (4 − π)r² to an end radius of %d', (endRadius) => {
    expect(area(featureLoop({ ...rib, endRadius }))).toBeCloseTo(400 - (4 - Math.PI) * endRadius ** 2, 6);
  });

  it('with round ends has no two points on one spot', () => {
    expect(featureLoop({ ...rib, endRadius: 4 })).toHaveLength(6);
  });

  it('is a pad of width times height, turned about its centre', () => {
    const pad = featureLoop({ kind: 'pad', centre: [7, 3], width: 6, height: 2, angleDeg: 30 });
    expect(area(pad)).toBeCloseTo(12, 12);
    const corners = pad as Points;
    expect(corners.reduce((sum, [x]) => sum + x, 0) / 4).toBeCloseTo(7, 12);
    // its first side runs at the angle
    const [[ax, ay], [bx, by]] = corners as unknown as [[number, number], [number, number]];
    expect(Math.atan2(by - ay, bx - ax)).toBeCloseTo(Math.PI / 6, 12);
  });

  it('is a boss of half its diameter', () => {
    expect(featureLoop({ kind: 'boss', centre: [1, 2], diameter: 35 })).toEqual({ circle: [1, 2], radius: 17.5 });
  });

  it.each([
    { ...rib, width: 0 },
    { ...rib, to: rib.from },
    { ...rib, endRadius: 4.1 },
    { kind: 'boss', centre: [0, 0], diameter: 0 },
  ] as const)('without sizes is none: %o', (feature) => expect(featureLoop(feature)).toBeNull());
});

describe('a run closed behind', () => {
  it('is a strip as long as the run and as wide as the metal goes on', () => {
    expect(
      area(
        closedBehind(
          [
            [0, 0],
            [10, 0],
          ],
          'left',
          3,
        ),
      ),
    ).toBe(30);
    expect(
      area(
        closedBehind(
          [
            [0, 0],
            [10, 0],
          ],
          'right',
          3,
        ),
      ),
    ).toBe(-30);
  });

  it('has its metal on the side that was said', () => {
    const ys = (side: 'left' | 'right') =>
      closedBehind(
        [
          [0, 0],
          [10, 0],
        ],
        side,
        3,
      )?.map(([, y]) => y);
    expect(ys('left')).toEqual([0, 0, 3, 3]);
    expect(ys('right')).toEqual([0, 0, -3, -3]);
  });

  it.each([
    // (l1 + l2)·w less or more the square of the corner
    ['left', 2, 2 * (10 + 6) - 4],
    ['right', 2, -(2 * (10 + 6) + 4)],
  ] as const)('goes round a square corner, metal on the %s', (side, behind, expected) => {
    expect(
      area(
        closedBehind(
          [
            [0, 0],
            [10, 0],
            [10, 6],
          ],
          side,
          behind,
        ),
      ),
    ).toBeCloseTo(expected, 12);
  });

  it.each([
    // half a ring between R 5 and R 3, or R 7
    ['left', (Math.PI / 2) * (25 - 9)],
    ['right', (Math.PI / 2) * (25 - 49)],
  ] as const)('keeps an arc about its centre, metal on the %s', (side, expected) => {
    expect(
      area(
        closedBehind(
          [
            [5, 0, 1],
            [-5, 0],
          ],
          side,
          2,
        ),
      ),
    ).toBeCloseTo(expected, 12);
  });

  it('meets a line and an arc that run on into one another in one point', () => {
    const run: Points = [
      [5, -10],
      [5, 0, 1],
      [-5, 0],
      [-5, -10],
    ];
    const closed = closedBehind(run, 'left', 2);
    expect(closed).toHaveLength(8);
    expect(area(closed)).toBeCloseTo((Math.PI / 2) * (25 - 9) + 40, 12);
  });

  it('meets a line and an arc in a corner where they cross', () => {
    // half a disc on a bar, metal inside: a corner at each foot
    const run: Points = [
      [10, 0],
      [5, 0, 1],
      [-5, 0],
      [-10, 0],
    ];
    const closed = closedBehind(run, 'right', 1);
    // the parallel arc of R 6 meets the parallel lines y = 1 at x = ±√35
    expect(closed?.some(([x, y]) => Math.abs(x - Math.sqrt(35)) < 1e-12 && Math.abs(y - 1) < 1e-12)).toBe(true);
    expect(area(closed)).toBeLessThan(0);
  });

  it('is none where an arc is too tight or an edge too short for it', () => {
    expect(
      closedBehind(
        [
          [5, 0, 1],
          [-5, 0],
        ],
        'left',
        5,
      ),
    ).toBeNull();
    expect(
      closedBehind(
        [
          [0, 0],
          [10, 0],
          [10, 1],
          [20, 1],
        ],
        'left',
        0,
      ),
    ).toBeNull();
    expect(
      closedBehind(
        [
          [0, 0],
          [5, 0],
          [5, 1],
          [0, 1],
        ],
        'left',
        2,
      ),
    ).toBeNull();
    expect(closedBehind([[0, 0]], 'left', 2)).toBeNull();
  });
});
