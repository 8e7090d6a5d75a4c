import { describe, expect, it } from 'vitest';
import { add, distance, scale, sub, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { findCamera } from '../../src/intake/photo/camera-place.ts';
import { carried } from '../../src/intake/photo/homography.ts';
import { pullToEdge } from '../../src/intake/photo/pull-to-edge.ts';
import { setPicture } from '../../src/intake/photo/set-picture.ts';
import { usualErrors } from '../../src/intake/photo/touch-noise.ts';
import { type Pinhole, randomCamera, seenInPlane, tiltOf } from '../support/camera.ts';
import { errorCoverage } from '../support/photo-errors.ts';
import { darkMiddle, photograph } from '../support/photograph.ts';
import { eightHoles, otherHoles, settled, sixHoles, touched, touchedRoughly } from '../support/plate.ts';
import { Random } from '../support/random.ts';

const fourHoles = [0, 2, 3, 5].map((i) => sixHoles[i] as Vec);

describe('the error stated of a picture', () => {
  it.each([
    ['4', fourHoles],
    ['6', sixHoles],
    ['8', eightHoles],
    ['16', [...eightHoles, ...otherHoles]],
  ])('set by %s points covers 92 to 99 of a hundred true ones, at most 2.5 times their rms', (_, holes) => {
    for (const sigmaPx of [0.5, 2]) {
      const trial = errorCoverage({ holes, views: 300, firstSeed: 10_000, sigmaPx });
      for (const { covered, meanOverRms } of [trial.settingMm, trial.traceMm]) {
        expect(covered).toBeGreaterThanOrEqual(0.92);
        expect(covered).toBeLessThanOrEqual(0.99);
        expect(meanOverRms).toBeLessThanOrEqual(2.5);
      }
    }
  });

  it('a coordinate typed 10 mm out among eight stands alone in 300 views', () => {
    for (let seed = 1; seed <= 300; seed += 1) {
      const random = new Random(seed);
      const points = touchedRoughly(randomCamera(random), eightHoles, random, 1);
      const k = random.whole(0, points.length - 1);
      const typed = points.map((p, i) => (i === k ? { ...p, at: add(p.at, vec(random.pick([-10, 10]), 0)) } : p));
      expect(settled(setPicture(typed, usualErrors)), `seed ${seed}`).toMatchObject({ agree: false, suspects: [k] });
    }
  });
});

describe('where the camera stood, from the points', () => {
  it('its stated error covers the true one in 92 to 99 of a hundred oblique views', () => {
    const random = new Random(20);
    const within: boolean[] = [];
    while (within.length < 200) {
      const camera = randomCamera(random, 0.6);
      if (tiltOf(camera) < 0.25) continue;
      const points = touchedRoughly(camera, eightHoles, random, 0.5);
      const setting = settled(setPicture(points, { touchErrorPx: 0.98, knownErrorMm: 0 }));
      const outcome = findCamera(setting, camera, { kind: 'points' });
      if (!outcome.ok) continue;
      const { heightMm, relativeError } = outcome.value;
      within.push(Math.abs(Math.log(heightMm / camera.at.z)) <= (relativeError ?? 0));
    }
    const share = within.filter(Boolean).length / within.length;
    expect(share).toBeGreaterThan(0.92);
    expect(share).toBeLessThanOrEqual(0.99);
  });
});

describe('a photograph of a plate with holes of 14 mm, 3000 px over 450 mm', () => {
  /** Level, so that the whole plate is in the picture. */
  const levelCamera = (random: Random, mostTiltRad: number): Pinhole => ({
    ...randomCamera(random, mostTiltRad),
    rollRad: random.between(-0.05, 0.05),
    width: 3700,
    height: 3000,
  });
  const plate = { holes: [...sixHoles, ...otherHoles.slice(0, 6)], radiusMm: 7 };
  const others = otherHoles.slice(0, 6);

  it.each([1, 2, 3, 4])('puts hole centres within 0.1 mm, points exact or found in it: view %i', (seed) => {
    const random = new Random(seed);
    const camera = levelCamera(random, 0.35);
    const picture = photograph(camera, plate, random);
    const pxAMm = camera.focalPx / Math.hypot(camera.at.x - camera.aim.x, camera.at.y - camera.aim.y, camera.at.z);
    const found = (at: Vec) => darkMiddle(picture, seenInPlane(camera, at), 9 * pxAMm);
    const exact = touched(camera, sixHoles);
    const byFound = sixHoles.map((at) => ({ at, px: found(at) }));
    for (const points of [exact, byFound]) {
      const { toPlane } = settled(setPicture(points, usualErrors)).fit;
      for (const at of others) expect(distance(carried(toPlane, found(at)) as Vec, at)).toBeLessThan(0.1);
    }
  });

  it('a rim traced roughly and pulled to the edge lies within 0.1 mm of it', () => {
    const random = new Random(9);
    const camera = levelCamera(random, 0.3);
    const picture = photograph(camera, plate, random);
    const { toPlane } = settled(setPicture(touched(camera, sixHoles), usualErrors)).fit;
    for (const centre of others) {
      for (const [x, y] of [
        [1, 0],
        [0, 1],
        [-0.6, 0.8],
        [0.8, -0.6],
      ] as const) {
        const rough = seenInPlane(camera, add(centre, scale(vec(x, y), random.between(6.4, 7.6))));
        const pulled = pullToEdge(picture, rough, sub(rough, seenInPlane(camera, centre)));
        const put = pulled.ok ? carried(toPlane, pulled.at) : null;
        expect(Math.abs(distance(put as Vec, centre) - 7)).toBeLessThan(0.1);
      }
    }
  });
});
