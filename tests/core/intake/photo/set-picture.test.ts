import { describe, expect, it } from 'vitest';
import { distance, type Vec } from '../../../../src/geometry/plane/vec.ts';
import { carried, type Homography, inverseMap } from '../../../../src/intake/photo/homography.ts';
import { setPicture } from '../../../../src/intake/photo/set-picture.ts';
import { errorAt, traceErrorMm } from '../../../../src/intake/photo/setting-error.ts';
import { usualErrors } from '../../../../src/intake/photo/touch-noise.ts';
import { randomCamera, seenInPlane } from '../../../support/camera.ts';
import {
  eightHoles,
  faultsOf,
  otherHoles,
  settled,
  sixHoles,
  touched,
  touchedRoughly,
} from '../../../support/plate.ts';
import { Random } from '../../../support/random.ts';

const fourHoles = [0, 2, 3, 5].map((i) => sixHoles[i] as Vec);
const camera = randomCamera(new Random(7), 0.4);
const pointsOf = (holes: readonly Vec[], k: number, change: Partial<Vec>) =>
  touched(camera, holes).map((point, i) => (i === k ? { ...point, at: { ...point.at, ...change } } : point));

describe('a picture set by known points', () => {
  it.each([
    ['four', fourHoles],
    ['six', sixHoles],
    ['eight', eightHoles],
  ])('%s points touched exactly put every other hole where it is, to 1e-9 mm, from any side', (_, holes) => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const seen = randomCamera(new Random(seed), 1);
      const { toPlane } = settled(setPicture(touched(seen, holes), usualErrors)).fit;
      for (const at of otherHoles)
        expect(distance(carried(toPlane, seenInPlane(seen, at)) as Vec, at)).toBeLessThan(1e-9);
    }
  });

  it('a known homography is found again, number by number, to 1e-9', () => {
    const known: Homography = [3.2, -0.4, 900, 0.5, -3.1, 700, 2e-4, -3e-4, 1];
    const points = eightHoles.map((at) => ({ at, px: carried(known, at) as Vec }));
    const { toPicture } = settled(setPicture(points, usualErrors)).fit;
    const relative = toPicture.map((value, i) => value / toPicture[8] / (known[i] as number) - 1);
    expect(Math.max(...relative.map(Math.abs))).toBeLessThan(1e-9);
    expect(carried(inverseMap(known), carried(known, { x: 31, y: -47 }) as Vec)?.x).toBeCloseTo(31, 10);
  });

  it('the squares are least: no small change of a point of the map makes the touches fit better', () => {
    const random = new Random(3);
    const points = touchedRoughly(camera, eightHoles, random, 2);
    const { toPicture, sumOfSquaresPx2 } = settled(setPicture(points, usualErrors)).fit;
    for (let go = 0; go < 200; go += 1) {
      const near = toPicture.map((v) => v * (1 + random.between(-1e-6, 1e-6))) as unknown as Homography;
      const squares = points.reduce((sum, { px, at }) => sum + distance(carried(near, at) as Vec, px) ** 2, 0);
      expect(squares).toBeGreaterThan(sumOfSquaresPx2 * (1 - 1e-12));
    }
  });

  it('what the others say of a point is what a picture set without it says', () => {
    const points = touchedRoughly(camera, sixHoles, new Random(4), 1);
    const checks = settled(setPicture(points, usualErrors)).points;
    for (const [i, { px, at }] of points.entries()) {
      const others = settled(setPicture(points.toSpliced(i, 1), usualErrors));
      const put = carried(others.fit.toPlane, px) as Vec;
      expect(checks[i]?.othersPutIt).toEqual(put);
      expect(checks[i]?.leaveOneOutMm).toBe(distance(put, at));
      expect(checks[i]?.leaveOneOutMm).toBeGreaterThan(checks[i]?.residualMm ?? Number.NaN);
    }
  });

  it('with four points nothing is left over: no residual, no word of the others, errors as stated', () => {
    const points = touchedRoughly(camera, fourHoles, new Random(4), 1);
    const setting = settled(setPicture(points, { touchErrorPx: 1.96, knownErrorMm: 0 }));
    expect(setting.fit.degreesOfFreedom).toBe(0);
    expect(Math.max(...setting.points.map((p) => p.residualMm ?? 1))).toBeLessThan(1e-9);
    expect(setting.points.map((p) => p.leaveOneOutMm)).toEqual([null, null, null, null]);
    expect(setting.noise.from).toBe('stated');
    expect(setting.noise.sigmaPx).toBeCloseTo(1, 9);
  });

  it('touches worse than stated are seen by their residuals', () => {
    const setting = settled(
      setPicture(touchedRoughly(camera, [...eightHoles, ...otherHoles], new Random(9), 4), usualErrors),
    );
    expect(setting.noise.from).toBe('residuals');
    expect(setting.agree).toBe(false);
    expect(setting.noise.sigmaPx).toBeGreaterThan(2.8);
  });

  it.each([
    ['eight', eightHoles, 1],
    ['six', sixHoles, 3],
  ])('a coordinate typed 10 mm out among %s points is suspected, and %i at the most are', (_, holes, most) => {
    for (const [k, { x }] of holes.entries()) {
      const { agree, suspects } = settled(setPicture(pointsOf(holes, k, { x: x + 10 }), usualErrors));
      expect(agree).toBe(false);
      expect(suspects).toContain(k);
      expect(suspects.length).toBeLessThanOrEqual(most);
    }
  });

  it('a coordinate typed ten times as large, and a swapped pair, are found or refused with who is suspected', () => {
    for (const [k, { x, y }] of eightHoles.entries()) {
      const outcome = setPicture(pointsOf(eightHoles, k, { x: 10 * x, y: 10 * y }), usualErrors);
      const fault = faultsOf(outcome)[0];
      expect(outcome.ok ? outcome.value.suspects : fault?.code === 'behind-camera' && fault.suspects).toEqual([k]);
    }
    const swapped = touched(camera, fourHoles).map(({ px }, i) => ({
      px,
      at: fourHoles[[1, 0, 2, 3][i] as number] as Vec,
    }));
    expect(faultsOf(setPicture(swapped, usualErrors))).toMatchObject([{ code: 'behind-camera' }]);
  });

  it('of five points that disagree none can be told from another', () => {
    const setting = settled(setPicture(pointsOf(sixHoles.slice(0, 5), 1, { y: -140 }), usualErrors));
    expect(setting).toMatchObject({ agree: false, suspects: [] });
  });

  it('a plane seen from the other side than its coordinates is said to be mirrored', () => {
    const points = touched(camera, sixHoles);
    expect(settled(setPicture(points, usualErrors)).mirrored).toBe(false);
    const flipped = points.map(({ px, at }) => ({ px, at: { x: -at.x, y: at.y } }));
    expect(settled(setPicture(flipped, usualErrors)).mirrored).toBe(true);
  });

  it('the error grows away from the points, and a traced outline has that of its worst vertex', () => {
    const setting = settled(setPicture(touched(camera, sixHoles), usualErrors));
    const [middle, far] = [
      { x: 0, y: 0 },
      { x: 400, y: 300 },
    ];
    const errors = [middle, far].map((at) => errorAt(setting, at)?.traceMm ?? Number.NaN);
    expect(errors[1]).toBeGreaterThan(2 * (errors[0] as number));
    expect(traceErrorMm(setting, [middle, far, middle])).toBe(errors[1]);
  });
});

describe('points that do not fix a picture', () => {
  const good = touched(camera, fourHoles);
  const [a, b, c, d] = good as [(typeof good)[0], (typeof good)[0], (typeof good)[0], (typeof good)[0]];
  const halfway = { at: { x: (a.at.x + b.at.x) / 2, y: (a.at.y + b.at.y) / 2 } };
  const between = { ...halfway, px: seenInPlane(camera, halfway.at) };

  it.each([
    ['three', [a, b, c], [{ code: 'too-few-points', found: 3, needed: 4 }]],
    ['none', [], [{ code: 'too-few-points', found: 0, needed: 4 }]],
    [
      'a coordinate that is no number',
      [a, b, c, { ...d, at: { x: Number.NaN, y: 0 } }],
      [{ code: 'not-a-number', point: 3 }],
    ],
    ['one typed twice', [a, b, c, { ...d, at: a.at }], [{ code: 'coincident', where: 'plane', points: [0, 3] }]],
    ['one touched twice', [a, b, c, { ...d, px: c.px }], [{ code: 'coincident', where: 'picture', points: [2, 3] }]],
    [
      'three in a line and one beside it',
      [a, b, between, d],
      [
        { code: 'in-a-line', where: 'plane', points: [0, 1, 2] },
        { code: 'in-a-line', where: 'picture', points: [0, 1, 2] },
      ],
    ],
  ])('%s: said as what they are', (_, points, faults) => {
    expect(faultsOf(setPicture(points, usualErrors))).toEqual(faults);
  });

  it('a touching error of 0 or less, and a known error below 0, are refused together', () => {
    expect(faultsOf(setPicture(good, { touchErrorPx: 0, knownErrorMm: -1 }))).toEqual([
      { code: 'out-of-range', what: 'touchErrorPx', found: 0 },
      { code: 'out-of-range', what: 'knownErrorMm', found: -1 },
    ]);
  });

  it('points strewn at random, touches strewn at random: a setting of finite figures, or a fault', () => {
    const random = new Random(11);
    for (let go = 0; go < 300; go += 1) {
      const points = Array.from({ length: random.whole(4, 7) }, () => ({
        px: { x: random.whole(0, 4) * 500, y: random.whole(0, 4) * 500 },
        at: { x: random.whole(0, 4) * 100, y: random.whole(0, 4) * 100 },
      }));
      const outcome = setPicture(points, usualErrors);
      if (!outcome.ok) expect(outcome.faults.length).toBeGreaterThan(0);
      else expect(outcome.value.fit.toPlane.every(Number.isFinite) && outcome.value.noise.sigmaPx > 0).toBe(true);
    }
  });
});
