import { describe, expect, it } from 'vitest';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { pulledCircle, pulledPoints, type Sight } from '../../../viewer/heavy/pull-outline.ts';
import type { XY } from '../../../viewer/job/arc.ts';
import type { PointList } from '../../../viewer/job/point-edits.ts';
import { type Pinhole, seenInPlane } from '../../support/camera.ts';
import { insideOf, photographOfSheets } from '../../support/face-photograph.ts';

const camera: Pinhole = {
  at: { x: 150, y: -120, z: 700 },
  aim: { x: 0, y: 0 },
  rollRad: 0.1,
  focalPx: 2400,
  width: 420,
  height: 380,
};
const [corner, round]: [PointList, { circle: [number, number]; radius: number }] = [
  [
    [-40, -30],
    [10, -34, 0.3],
    [18, 20],
    [-10, 14],
    [-38, 26],
  ],
  { circle: [38, 22], radius: 9 },
];
const grey = photographOfSheets(camera, [
  { zMm: 0, grey: 40, covers: insideOf([round]) },
  { zMm: 0, grey: 170, covers: insideOf([[...corner]]) },
]);
const sight: Sight = {
  grey: { width: camera.width, height: camera.height, grey },
  corner: { x: 0, y: 0 },
  toPx: ([x, y]: XY): Vec => seenInPlane(camera, { x, y }),
};

describe('an outline traced roughly over a photograph', () => {
  const strays = [0.7, -0.6, 0.4, 0.5, -0.8];
  const rough = corner.map(([x, y, bulge], i): [number, number, number?] =>
    bulge === undefined ? [x + (strays[i] ?? 0), y + (strays[4 - i] ?? 0)] : [x - 0.6, y + 0.6, bulge],
  );

  it('is pulled with its corners and its arc onto the edges of what it shows, within a tenth of a millimetre', () => {
    const { outline, found, of, moved } = pulledPoints(sight, rough, true, 1);
    expect([found, of]).toEqual([5, 5]);
    for (const [i, [x, y]] of corner.entries())
      expect(Math.hypot(x - (outline[i]?.[0] ?? 0), y - (outline[i]?.[1] ?? 0)), `vertex ${i}`).toBeLessThan(0.1);
    expect(moved).toBeGreaterThan(0.5);
    expect(moved).toBeLessThan(1.5);
  });

  it('keeps an edge that the picture does not show, and slides along it', () => {
    const half = rough.map(([x, y, bulge], i): [number, number, number?] =>
      i === 3 || i === 4 ? [x, y - 12] : bulge === undefined ? [x, y] : [x, y, bulge],
    );
    const { outline, found, of } = pulledPoints(sight, half, true, 1);
    expect(of - found).toBe(2);
    const [dx, dy] = [(half[4]?.[0] ?? 0) - (half[3]?.[0] ?? 0), (half[4]?.[1] ?? 0) - (half[3]?.[1] ?? 0)];
    for (const i of [3, 4]) {
      const [mx, my] = [(outline[i]?.[0] ?? 0) - (half[i]?.[0] ?? 0), (outline[i]?.[1] ?? 0) - (half[i]?.[1] ?? 0)];
      expect(Math.abs(mx * dy - my * dx) / Math.hypot(dx, dy)).toBeLessThan(0.02);
    }
  });

  it('that lies on plain metal is not moved at all', () => {
    const plain: PointList = [
      [-25, -15],
      [-15, -15],
      [-15, 0],
    ];
    expect(pulledPoints(sight, plain, true, 1)).toEqual({ outline: plain, found: 0, of: 3, moved: 0 });
  });

  it('a line that is not closed has its ends pulled square to it', () => {
    const run: PointList = [
      [-30, -31.8],
      [0, -34.2],
    ];
    const { outline, found } = pulledPoints(sight, run, false, 1);
    expect(found).toBe(1);
    // the edge from (−40, −30) to (10, −34)
    for (const [x, y] of outline) expect(y).toBeCloseTo(-30 - ((x + 40) * 4) / 50, 1);
  });

  it('a circle is pulled to the rim, in inches as in millimetres', () => {
    const rim = pulledCircle(sight, { circle: [38.6, 21.5], radius: 9.5 }, 1);
    expect(rim.found).toBe(1);
    expect(Math.hypot(rim.outline.circle[0] - 38, rim.outline.circle[1] - 22)).toBeLessThan(0.05);
    expect(Math.abs(rim.outline.radius - 9)).toBeLessThan(0.05);
    const inches = pulledCircle(
      { ...sight, toPx: ([x, y]) => sight.toPx([x * 25.4, y * 25.4]) },
      { circle: [38.6 / 25.4, 21.5 / 25.4], radius: 9.5 / 25.4 },
      25.4,
    );
    expect(inches.outline.radius * 25.4).toBeCloseTo(rim.outline.radius, 3);
  });
});
