import fc from 'fast-check';
import { Matrix, SVD } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { apply, type Rigid, rigid } from '../../../src/geometry/plane/rigid.ts';
import { type PointPair, rigidFit } from '../../../src/geometry/plane/rigid-fit.ts';
import { distance, type Vec, vec } from '../../../src/geometry/plane/vec.ts';

const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const noise = fc.record({
  x: fc.double({ min: -2, max: 2, noNaN: true }),
  y: fc.double({ min: -2, max: 2, noNaN: true }),
});
const anyRigid = fc
  .tuple(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), point)
  .map(([turnRad, shift]) => rigid(turnRad, shift));

const spread = (points: readonly Vec[]) => Math.max(...points.map((p) => distance(p, points[0] as Vec)));

const noisyPairs = fc
  .tuple(fc.array(fc.tuple(point, noise), { minLength: 2, maxLength: 12 }), anyRigid)
  .map(([points, motion]) =>
    points.map(([from, off]): PointPair => {
      const to = apply(motion, from);
      return { from, to: vec(to.x + off.x, to.y + off.y) };
    }),
  )
  .filter((pairs) => spread(pairs.map((p) => p.from)) > 20);

/** Kabsch by singular value decomposition, kept to proper rotations. */
function kabsch(pairs: readonly PointPair[]): Rigid {
  const mean = (points: readonly Vec[]) =>
    vec(points.reduce((s, p) => s + p.x, 0) / points.length, points.reduce((s, p) => s + p.y, 0) / points.length);
  const from = mean(pairs.map((p) => p.from));
  const to = mean(pairs.map((p) => p.to));
  const row = (p: Vec, middle: Vec) => [p.x - middle.x, p.y - middle.y];
  const covariance = new Matrix(pairs.map((p) => row(p.from, from)))
    .transpose()
    .mmul(new Matrix(pairs.map((p) => row(p.to, to))));
  const svd = new SVD(covariance);
  const u = svd.leftSingularVectors;
  const v = svd.rightSingularVectors;
  const proper = v.get(0, 0) * v.get(1, 1) - v.get(0, 1) * v.get(1, 0);
  const improper = u.get(0, 0) * u.get(1, 1) - u.get(0, 1) * u.get(1, 0);
  const rotation = v.mmul(Matrix.diag([1, Math.sign(proper * improper)])).mmul(u.transpose());
  const turn = rigid(Math.atan2(rotation.get(1, 0), rotation.get(0, 0)), vec(0, 0));
  const carried = apply(turn, from);
  return { ...turn, shift: vec(to.x - carried.x, to.y - carried.y) };
}

describe('the least-squares rigid fit', () => {
  test("carries every point where ml-matrix's singular value decomposition carries it", () => {
    fc.assert(
      fc.property(noisyPairs, (pairs) => {
        const ours = rigidFit(pairs).motion;
        const theirs = kabsch(pairs);
        for (const { from } of pairs) expect(distance(apply(ours, from), apply(theirs, from))).toBeLessThan(1e-9);
      }),
      { seed: 20260, numRuns: 500 },
    );
  });

  test('undoes any rigid motion to the last digits', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), anyRigid, (points, motion) => {
        const { rmsMm } = rigidFit(points.map((from) => ({ from, to: apply(motion, from) })));
        expect(rmsMm).toBeLessThan(1e-10);
      }),
      { seed: 20261 },
    );
  });

  test('leaves no nearby motion that fits better', () => {
    fc.assert(
      fc.property(noisyPairs, anyRigid, (pairs, other) => {
        const { motion, rmsMm } = rigidFit(pairs);
        const nudged = rigid(motion.turnRad + other.turnRad / 1e4, {
          x: motion.shift.x + other.shift.x / 1e4,
          y: motion.shift.y + other.shift.y / 1e4,
        });
        const squares = pairs.map(({ from, to }) => distance(apply(nudged, from), to) ** 2);
        const nudgedRmsMm = Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length);
        expect(nudgedRmsMm).toBeGreaterThanOrEqual(rmsMm - 1e-9);
      }),
      { seed: 20262 },
    );
  });

  test('is exactly the identity for two drawings that already agree', () => {
    const pairs = [vec(-158.3, 12.7), vec(156.1, -30.9), vec(70.2, 141.4)].map((p) => ({ from: p, to: p }));
    const { motion, offsetsMm, rmsMm } = rigidFit(pairs);
    expect([motion.turnRad, motion.shift, offsetsMm, rmsMm]).toEqual([0, vec(0, 0), [0, 0, 0], 0]);
  });

  test('gives each offset and their root mean square: two dowels 0.12 mm wide are 0.06 mm off each', () => {
    const { offsetsMm, rmsMm } = rigidFit([
      { from: vec(-100, 0), to: vec(-100, 7) },
      { from: vec(100.12, 0), to: vec(100, 7) },
    ]);
    expect(offsetsMm[0]).toBeCloseTo(0.06, 12);
    expect(offsetsMm[1]).toBeCloseTo(0.06, 12);
    expect(rmsMm).toBeCloseTo(0.06, 12);
  });

  test('does not turn where no turn is better than another: an even triangle onto its mirror image', () => {
    const corner = (deg: number) => vec(100 * Math.cos((deg * Math.PI) / 180), 100 * Math.sin((deg * Math.PI) / 180));
    const pairs = [20, 140, 260].map((deg) => ({ from: corner(deg), to: corner(-deg) }));
    expect(rigidFit(pairs).motion.turnRad).toBe(0);
  });

  test('carries a single point without turning', () => {
    const { motion, rmsMm } = rigidFit([{ from: vec(3, 4), to: vec(10, 20) }]);
    expect([motion.turnRad, motion.shift, rmsMm]).toEqual([0, vec(7, 16), 0]);
  });
});
