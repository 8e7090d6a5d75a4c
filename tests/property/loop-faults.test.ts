import fc from 'fast-check';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js';
import { describe, expect, it } from 'vitest';
import { forEachClosePair } from '../../src/geometry/plane/close-edges.ts';
import { edgeOfBulge, pointOnEdge } from '../../src/geometry/plane/edge.ts';
import { meetingOf, meetingOfNeighbours } from '../../src/geometry/plane/edge-meeting.ts';
import { type Loop, mirrorRegion, moveRegion, polygonLoop } from '../../src/geometry/plane/loop.ts';
import { loopFaults } from '../../src/geometry/plane/loop-faults.ts';
import { boxesComeWithin, orientedBoxes, storeBoxOfEdge } from '../../src/geometry/plane/oriented-box.ts';
import { rotationAbout } from '../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { disc } from '../support/jobs.ts';
import { edgeGap } from '../support/oracles/edge-gap.ts';

const gridPoint = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })).map(([x, y]) => vec(x, y));

/** Few vertices on a small grid: about half of them touch, cross or run back somewhere. */
const gridPoints = fc.array(gridPoint, { minLength: 3, maxLength: 7 });
const gridLoop: fc.Arbitrary<Loop> = gridPoints.map(polygonLoop);

const factory = new GeometryFactory();

function isValidInJsts(points: readonly Vec[]): boolean {
  const closed = [...points, ...points.slice(0, 1)].map(({ x, y }) => new Coordinate(x, y));
  return IsValidOp.isValid(factory.createPolygon(factory.createLinearRing(closed)));
}

const hasRepeat = (points: readonly Vec[]): boolean =>
  points.some(({ x, y }, i) => points.slice(i + 1).some((other) => other.x === x && other.y === y));

const anyEdge = fc
  .tuple(gridPoint, gridPoint, fc.constantFrom(0, 0.3, -1, 2.5))
  .filter(([a, b]) => a.x !== b.x || a.y !== b.y)
  .map(([a, b, bulge]) => edgeOfBulge(a, b, bulge));

describe('faults of loops', () => {
  it('a polygon without repeated vertices is sound exactly when jsts calls it valid', () => {
    const seen = { sound: 0, faulty: 0 };
    fc.assert(
      fc.property(
        gridPoints.filter((points) => !hasRepeat(points)),
        (points) => {
          const isSound = loopFaults([polygonLoop(points)]).length === 0;
          seen[isSound ? 'sound' : 'faulty']++;
          expect(isSound).toBe(isValidInJsts(points));
        },
      ),
      { numRuns: 2000 },
    );
    expect(Math.min(seen.sound, seen.faulty)).toBeGreaterThan(100);
  });

  it('two edges, straight or bent, meet exactly when they are no distance apart', () => {
    fc.assert(
      fc.property(anyEdge, anyEdge, (e, f) => {
        expect(meetingOf(e, f, 1e-9) !== null).toBe(edgeGap(e, f).mm <= 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  it('neighbours meet again exactly when they do with their common vertex cut away', () => {
    const bulge = fc.constantFrom(0, 0.3, -1, 2.5);
    const cut = 1e-3;
    fc.assert(
      fc.property(gridPoint, gridPoint, gridPoint, bulge, bulge, (p, shared, q, b1, b2) => {
        fc.pre(!hasRepeat([p, shared, q]));
        const [e, f] = [edgeOfBulge(p, shared, b1), edgeOfBulge(shared, q, b2)];
        const shorter = (b: number) => Math.tan(Math.atan(b) * (1 - cut));
        const before = edgeOfBulge(p, pointOnEdge(e, 1 - cut), shorter(b1));
        const after = edgeOfBulge(pointOnEdge(f, cut), q, shorter(b2));
        expect(meetingOfNeighbours(e, f, 1e-9) !== null).toBe(edgeGap(before, after).mm <= 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  it('two circles meet exactly when their centres lie between the difference and the sum of their radii apart', () => {
    const length = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(length, length, length, length, (x, y, r1, r2) => {
        const apart = Math.hypot(x, y);
        const meet = apart <= r1 + r2 && apart >= Math.abs(r1 - r2);
        expect(loopFaults([disc(0, 0, r1), disc(x, y, r2)]).length > 0).toBe(meet);
      }),
    );
  });

  it('a loop is as sound in a mirror and turned a quarter', () => {
    fc.assert(
      fc.property(gridLoop, (loop) => {
        const kinds = (region: readonly Loop[]) =>
          loopFaults(region)
            .map(({ kind }) => kind)
            .sort();
        const quarter = { ...rotationAbout(vec(0, 0), Math.PI / 2), cos: 0, sin: 1 };
        expect(kinds(mirrorRegion([loop]))).toEqual(kinds([loop]));
        expect(kinds(moveRegion([loop], quarter))).toEqual(kinds([loop]));
      }),
    );
  });

  it('the tree of boxes finds the very pairs that comparing all with all finds', () => {
    fc.assert(
      fc.property(fc.array(anyEdge, { maxLength: 30 }), (edges) => {
        const found: string[] = [];
        forEachClosePair([edges], 0.1, 1e6, (i, j) => found.push(`${Math.min(i, j)}-${Math.max(i, j)}`) > 0);
        const boxes = orientedBoxes(edges.length);
        for (const [i, edge] of edges.entries()) storeBoxOfEdge(boxes, i, edge);
        const expected = edges.flatMap((_, i) =>
          edges.flatMap((__, j) => (i < j && boxesComeWithin(boxes, i, j, 0.1) ? [`${i}-${j}`] : [])),
        );
        expect(found.sort()).toEqual(expected.sort());
      }),
    );
  });
});
