import { describe, expect, it } from 'vitest';
import { distance, type Vec } from '../../../../src/geometry/plane/vec.ts';
import { shiftAtDepthMm, trueAtDepth } from '../../../../src/intake/photo/at-depth.ts';
import { findCamera } from '../../../../src/intake/photo/camera-place.ts';
import { carried } from '../../../../src/intake/photo/homography.ts';
import { setPicture } from '../../../../src/intake/photo/set-picture.ts';
import { usualErrors } from '../../../../src/intake/photo/touch-noise.ts';
import { type Pinhole, seenBy, tiltOf } from '../../../support/camera.ts';
import { faultsOf, otherHoles, settled, sixHoles, touched } from '../../../support/plate.ts';

const tilted = (tiltRad: number, awayMm = 1500): Pinhole => ({
  at: { x: awayMm * Math.sin(tiltRad), y: 30, z: awayMm * Math.cos(tiltRad) },
  aim: { x: 0, y: 30 },
  rollRad: 0.7,
  focalPx: awayMm * 6,
  width: 3600,
  height: 2700,
});

const setBy = (camera: Pinhole) => settled(setPicture(touched(camera, sixHoles), usualErrors));

/** What a 36 × 24 mm frame would need to see as much from corner to corner. */
const focal35Of = ({ focalPx, width, height }: Pinhole): number =>
  (focalPx * Math.hypot(36, 24)) / Math.hypot(width, height);

describe('where the camera stood', () => {
  it('follows from the points of an oblique view, exactly where they are exact', () => {
    for (const tiltRad of [0.15, 0.3, 0.6]) {
      const camera = tilted(tiltRad);
      const place = settled(findCamera(setBy(camera), camera, { kind: 'points' }));
      expect(place.heightMm).toBeCloseTo(camera.at.z, 6);
      expect(distance(place.foot, camera.at)).toBeLessThan(1e-6);
      expect(place.focalPx).toBeCloseTo(camera.focalPx, 5);
      expect(place.tiltRad).toBeCloseTo(tiltOf(camera), 9);
    }
  });

  it.each([0, 0.02, 0.1, 0.3, 0.5])('follows from the focal length, or the height, at a tilt of %f', (tiltRad) => {
    const camera = tilted(tiltRad);
    const setting = setBy(camera);
    const byFocal = settled(findCamera(setting, camera, { kind: 'focal', focal35Mm: focal35Of(camera) }));
    const byHeight = settled(findCamera(setting, camera, { kind: 'height', heightMm: camera.at.z }));
    for (const place of [byFocal, byHeight]) {
      expect(place.heightMm).toBeCloseTo(camera.at.z, 6);
      expect(distance(place.foot, camera.at)).toBeLessThan(1e-6);
    }
  });

  it('does not follow from points seen square-on, and that is said', () => {
    for (const tiltRad of [0, 0.01]) {
      const camera = { ...tilted(tiltRad), aim: { x: 0, y: 30 } };
      const faults = faultsOf(findCamera(setBy(camera), camera, { kind: 'points' }));
      expect(faults.map(({ code }) => code)).toEqual(['too-square-on']);
    }
  });

  it('a height no camera could have, and a focal length of 0, are refused', () => {
    const camera = tilted(0.4);
    const fault = (from: Parameters<typeof findCamera>[2]) => faultsOf(findCamera(setBy(camera), camera, from));
    expect(fault({ kind: 'height', heightMm: 1e6 })).toEqual([{ code: 'no-such-height', heightMm: 1e6 }]);
    expect(fault({ kind: 'height', heightMm: 1 })).toEqual([{ code: 'no-such-height', heightMm: 1 }]);
    expect(fault({ kind: 'height', heightMm: -3 })).toEqual([{ code: 'out-of-range', what: 'heightMm', found: -3 }]);
    expect(fault({ kind: 'focal', focal35Mm: 0 })).toEqual([{ code: 'out-of-range', what: 'focal35Mm', found: 0 }]);
  });
});

describe('an outline behind the plane, or proud of it', () => {
  it('is put where it is, exactly, whatever its depth and wherever the camera stood', () => {
    for (const tiltRad of [0, 0.2, 0.5]) {
      const camera = tilted(tiltRad);
      const { toPlane } = setBy(camera).fit;
      for (const depthMm of [-44, -3, 0, 12, 90]) {
        for (const at of otherHoles) {
          const seen = carried(toPlane, seenBy(camera, { ...at, z: -depthMm })) as Vec;
          const place = { heightMm: camera.at.z, foot: camera.at };
          expect(distance(settled(trueAtDepth(place, seen, depthMm)), at)).toBeLessThan(1e-8);
          expect(shiftAtDepthMm(place, seen, depthMm)).toBeCloseTo(distance(seen, at), 8);
        }
      }
    }
  });

  // x·dz / (D − dz), D from the camera to the feature itself
  it.each([
    [10, 1000, 2.02],
    [10, 3000, 0.67],
    [25, 1000, 5.13],
    [25, 3000, 1.68],
  ])('200 mm out and %i mm behind, %i mm from the camera, it is %f mm out', (depthMm, cameraMm, expected) => {
    const place = { heightMm: cameraMm - depthMm, foot: { x: 0, y: 0 } };
    expect(shiftAtDepthMm(place, { x: 200, y: 0 }, depthMm)).toBeCloseTo(expected, 2);
  });

  it('proud of the plane as far as the camera, it is refused', () => {
    const place = { heightMm: 500, foot: { x: 0, y: 0 } };
    expect(faultsOf(trueAtDepth(place, { x: 1, y: 0 }, -500))).toEqual([
      { code: 'beyond-camera', depthMm: -500, heightMm: 500 },
    ]);
  });
});
