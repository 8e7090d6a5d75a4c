import { describe, expect, it } from 'vitest';
import { distance, type Vec } from '../../../../src/geometry/plane/vec.ts';
import { carried } from '../../../../src/intake/photo/homography.ts';
import { setSquareOn } from '../../../../src/intake/photo/set-square-on.ts';
import { errorAt } from '../../../../src/intake/photo/setting-error.ts';
import { tiltErrorMm } from '../../../../src/intake/photo/tilt-error.ts';
import { usualErrors } from '../../../../src/intake/photo/touch-noise.ts';
import { type Pinhole, seenInPlane } from '../../../support/camera.ts';
import { faultsOf, otherHoles, settled, shaken, touched } from '../../../support/plate.ts';
import { Random } from '../../../support/random.ts';

const dowels: readonly [Vec, Vec] = [
  { x: -158, y: 12 },
  { x: 161, y: -20 },
];

/** Over (0, 0) at 3 m, leaning by an angle in the direction of x. */
const camera = (tiltRad: number, rollRad = 0, awayMm = 3000): Pinhole => ({
  at: { x: awayMm * Math.sin(tiltRad), y: 0, z: awayMm * Math.cos(tiltRad) },
  aim: { x: 0, y: 0 },
  rollRad,
  focalPx: awayMm * 6,
  width: 3000,
  height: 2000,
});

describe('a picture taken square-on', () => {
  it('is set by two points exactly, however it is turned', () => {
    for (const rollRad of [0, 0.3, 1.7, -2.9]) {
      const [first, second] = touched(camera(0, rollRad), dowels);
      const { fit } = settled(setSquareOn(first as never, second as never, usualErrors));
      for (const at of otherHoles)
        expect(distance(carried(fit.toPlane, seenInPlane(camera(0, rollRad), at)) as Vec, at)).toBeLessThan(1e-9);
    }
  });

  it('a bare distance measures lengths: half the way in pixels is half the distance', () => {
    const setting = setSquareOn(
      { px: { x: 100, y: 900 }, at: { x: 0, y: 0 } },
      { px: { x: 1300, y: 900 }, at: { x: 300, y: 0 } },
      usualErrors,
    );
    const put = carried(settled(setting).fit.toPlane, { x: 700, y: 500 });
    expect(put?.x).toBeCloseTo(150, 10);
    expect(put?.y).toBeCloseTo(100, 10);
  });

  it('its error is that of two touches carried along: (|1 − z|² + |z|²) of their variance at z times the way', () => {
    const setting = settled(
      setSquareOn(
        { px: { x: 0, y: 0 }, at: { x: 0, y: 0 } },
        { px: { x: 1000, y: 0 }, at: { x: 250, y: 0 } },
        { touchErrorPx: 1.96, knownErrorMm: 0 },
      ),
    );
    const limitAtPoint = errorAt(setting, { x: 0, y: 0 })?.settingMm ?? Number.NaN;
    for (const at of [
      { x: 125, y: 0 },
      { x: 500, y: 0 },
      { x: -100, y: 340 },
    ]) {
      const share = ((250 - at.x) ** 2 + 2 * at.y ** 2 + at.x ** 2) / 250 ** 2;
      expect(errorAt(setting, at)?.settingMm).toBeCloseTo(limitAtPoint * Math.sqrt(share), 9);
    }
    // 0.25 mm a pixel; √(2·3.63) is the 95 % limit of a round scatter known to 16 degrees, F(2, 16) = 3.634 in tables
    expect(limitAtPoint).toBeCloseTo(0.25 * Math.sqrt(2 * 3.634), 3);
  });

  it('that error holds in 92 to 99 of a hundred pictures', () => {
    const random = new Random(2);
    const within = Array.from({ length: 1000 }, () => {
      const [first, second] = touched(camera(0), dowels).map(({ at, px }) => ({ at, px: shaken(random, px, 1) }));
      const setting = settled(setSquareOn(first as never, second as never, { touchErrorPx: 1.96, knownErrorMm: 0 }));
      const at = random.pick(otherHoles);
      const put = carried(setting.fit.toPlane, seenInPlane(camera(0), at)) as Vec;
      return distance(put, at) <= (errorAt(setting, at)?.settingMm ?? 0);
    });
    const share = within.filter(Boolean).length / within.length;
    expect(share).toBeGreaterThan(0.92);
    expect(share).toBeLessThan(0.99);
  });

  it.each([
    [2, 0.122, Number.POSITIVE_INFINITY],
    [5, 0.761, Number.POSITIVE_INFINITY],
  ])('200 mm seen %i° from square are shortened by %f mm from far away', (degrees, expected, cameraMm) => {
    const tiltRad = (degrees * Math.PI) / 180;
    expect(tiltErrorMm({ tiltRad, reachMm: 200, cameraMm })).toBeCloseTo(expected, 3);
  });

  it('what a lean adds is the worse of what a camera sees to either side, the scale being right across it', () => {
    for (const tiltRad of [0.01, 0.035, 0.1, 0.3]) {
      for (const awayMm of [800, 3000]) {
        const leaning = camera(tiltRad, 0.4, awayMm);
        const upright: readonly Vec[] = [
          { x: 0, y: -60 },
          { x: 0, y: 60 },
        ];
        const [first, second] = touched(leaning, upright);
        const { fit } = settled(setSquareOn(first as never, second as never, usualErrors));
        const off = [-200, 200].map((x) => {
          const at = { x, y: 0 };
          return distance(carried(fit.toPlane, seenInPlane(leaning, at)) as Vec, at);
        });
        expect(tiltErrorMm({ tiltRad, reachMm: 200, cameraMm: awayMm })).toBeCloseTo(Math.max(...off), 8);
      }
    }
  });

  it('a place level with the camera has no error that could be stated', () => {
    expect(tiltErrorMm({ tiltRad: 1.5, reachMm: 400, cameraMm: 300 })).toBeNull();
  });

  it('two points in one place, and figures that are none, are refused', () => {
    const [first, second] = touched(camera(0), dowels) as [never, { px: Vec; at: Vec }];
    expect(faultsOf(setSquareOn(second, second, usualErrors)).map(({ code }) => code)).toEqual([
      'coincident',
      'coincident',
    ]);
    const unread = { ...second, px: { x: Number.NaN, y: 0 } };
    expect(faultsOf(setSquareOn(first, unread, usualErrors))).toEqual([{ code: 'not-a-number', point: 1 }]);
  });
});
