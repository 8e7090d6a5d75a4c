import { describe, expect, it, test } from 'vitest';
import { sweptRegion } from '../../../src/geometry/motion/swept-region.ts';
import type { Side } from '../../../src/geometry/plane/arc-points.ts';
import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOfRegion, polygonLoop, type Region } from '../../../src/geometry/plane/loop.ts';
import { loopFaults } from '../../../src/geometry/plane/loop-faults.ts';
import { identity } from '../../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { loopsWithArcs } from '../../../src/geometry/polygons/arcs-of-polygons.ts';
import { edgesThrough } from '../../../src/geometry/polygons/arcs-of-run.ts';
import { metalOnLeft } from '../../../src/geometry/polygons/metal-on-left.ts';
import { offset } from '../../../src/geometry/polygons/offset.ts';
import { difference, union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { loopsOf, type Polygons } from '../../../src/geometry/polygons/polygons.ts';
import { soundPolygons } from '../../../src/geometry/polygons/sound-polygons.ts';
import { Random } from '../../support/random.ts';
import { randomRegion } from '../../support/random-outlines.ts';
import { box, disc, path, turnBy } from '../../support/shapes.ts';

/** As the plan has them: arcs as polygons, and polygons as arcs again. */
const polygonsMm = 1e-4;
const withinMm = 3e-4;

/** Half a step of the grid either way in each of a vertex's coordinates, and of the sampling below. */
const gridMm = 2e-6;

const grown = (region: Region, byMm: number): Polygons =>
  offset(metalOnLeft(region), byMm, polygonsMm, 'outside').polygons;

/** A place is inside where a ray to the right crosses edges an odd number of times; below nothing there, mm. */
function outsideMm(p: Vec, polygons: Polygons): number {
  let [inside, least] = [false, Number.POSITIVE_INFINITY];
  for (const polygon of polygons) {
    for (const [i, a] of polygon.entries()) {
      const b = polygon[(i + 1) % polygon.length] as Vec;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) * dx) / dy) inside = !inside;
      const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy));
    }
  }
  return inside ? -least : least;
}

/** Places all along the edges of loops, the arcs' densely. */
const placesOn = (loops: Region, each: number): Vec[] =>
  edgesOfRegion(loops).flatMap((edge) => {
    const count = edge.kind === 'arc' ? each : 8;
    return Array.from({ length: count }, (_, k) => pointOnEdge(edge, (k + 0.5) / count));
  });

/** The loops of polygons, found by sampling to err to the asked side by no more than is told, and sound. */
function toldOf(polygons: Polygons, side: Side, each = 200): Region {
  const { loops, offMm } = loopsWithArcs(polygons, side, withinMm);
  expect(offMm).toBeLessThanOrEqual(withinMm);
  expect(loopFaults(loops)).toEqual([]);
  const off = placesOn(loops, each).map((p) => (side === 'outside' ? 1 : -1) * outsideMm(p, polygons));
  expect(Math.min(...off)).toBeGreaterThan(-gridMm);
  expect(Math.max(...off)).toBeLessThan(offMm + gridMm);
  return loops;
}

/** How many lines, and the radii of the arcs, of all loops. */
function kindsOf(loops: Region): { readonly lines: number; readonly radii: number[] } {
  const edges = edgesOfRegion(loops);
  const radii = edges.flatMap((edge) => (edge.kind === 'arc' ? [edge.radius] : []));
  return { lines: edges.length - radii.length, radii: radii.sort((a, b) => a - b) };
}

function expectKinds(loops: Region, lines: number, radii: readonly number[]): void {
  const found = kindsOf(loops);
  expect(found.lines).toBe(lines);
  expect(found.radii).toHaveLength(radii.length);
  for (const [i, radius] of radii.entries()) expect(Math.abs((found.radii[i] as number) - radius)).toBeLessThan(2e-3);
}

const slot = [path([-20, -5], [20, -5, 1], [20, 5], [-20, 5, 1])];
const bean = sweptRegion(disc(100, 0, 8), identity, turnBy(40), polygonsMm).polygons;
/** Two arcs that are one smooth line, of 30 and then of 10 mm, in a piece with corners. */
const hook = [path([0, 0], [60, 0], [60, 30, Math.tan(Math.PI / 8)], [30, 60, Math.tan(Math.PI / 8)], [20, 50])];

describe('polygons told by arcs are', () => {
  const cases: readonly [string, Polygons, number, readonly number[]][] = [
    ['a circle, of a disc grown', grown(disc(3, 4, 25), 5), 0, [30]],
    ['two lines and two half circles, of a slot grown', grown(slot, 2), 2, [7, 7]],
    ['four lines and four arcs, of a rectangle grown', grown(box(-30, -20, 30, 20), 6), 4, [6, 6, 6, 6]],
    ['four arcs, of a disc swept round a pole', bean, 0, [8, 8, 92, 108]],
    ['tangent arcs apart, each with its radius', polygonise(hook, polygonsMm, 'outside'), 3, [10, 30]],
    ['the square it is', polygonise(box(0, 0, 10, 10), polygonsMm, 'outside'), 4, []],
  ];
  test.each(cases)('%s', (_, polygons, lines, radii) => {
    expectKinds(toldOf(polygons, 'outside'), lines, radii);
  });

  it('on the inner side as well, and round holes the other way about', () => {
    const ring = [...disc(0, 0, 40), ...disc(5, 0, 20)];
    for (const side of ['inside', 'outside'] as const)
      expectKinds(toldOf(polygonise(ring, polygonsMm, side), side), 0, [20, 40]);
    expectKinds(toldOf(polygonise(slot, polygonsMm, 'inside'), 'inside'), 2, [5, 5]);
  });

  it('found wherever the polygon begins', () => {
    const [polygon = []] = grown(slot, 2);
    for (let k = 0; k < polygon.length; k += 7)
      expectKinds(loopsWithArcs([[...polygon.slice(k), ...polygon.slice(0, k)]], 'outside', withinMm).loops, 2, [7, 7]);
  });
});

describe('polygons told by arcs', () => {
  it('err to the asked side by no more than is told, and have far fewer edges, of 200 random unions and differences', () => {
    let [before, after] = [0, 0];
    for (let seed = 0; seed < 200; seed++) {
      const random = new Random(seed);
      const side = random.pick(['outside', 'inside'] as const);
      const [a, b] = [randomRegion(random, 40), randomRegion(random, 40)].map((region, i) =>
        polygonise(region, polygonsMm, i === 0 ? side : random.pick(['outside', 'inside'])),
      ) as [Polygons, Polygons];
      const { polygons } = soundPolygons(random.pick([union([...a, ...b]), difference(a, b)]), side);
      // two circles that are one leave films that no patch parts
      if (loopFaults(loopsOf(polygons)).length > 0) continue;
      before += polygons.flat().length;
      after += edgesOfRegion(toldOf(polygons, side, 40)).length;
    }
    expect(after).toBeLessThan(before / 20);
  });

  it('keep their edges where arcs would touch what is beside them', () => {
    // a ring thinner than what arcs may take off it
    const thin = polygonise([...disc(0, 0, 20), ...disc(0, 0, 19.9998)], 1e-5, 'inside');
    const { loops, offMm } = loopsWithArcs(thin, 'inside', withinMm);
    expect(loops).toEqual(thin.map(polygonLoop));
    expect(offMm).toBe(0);
  });

  it('stay what they are where they are noise of 0.2 mm, 10,000 edges in a moment', () => {
    const random = new Random(5);
    const noisy = Array.from({ length: 10_000 }, (_, i) => {
      const [angle, radius] = [(i / 10_000) * 2 * Math.PI, 300 + random.between(-0.1, 0.1)];
      return vec(Math.round(radius * Math.cos(angle) * 1e6) / 1e6, Math.round(radius * Math.sin(angle) * 1e6) / 1e6);
    });
    const start = performance.now();
    const { loops } = loopsWithArcs([noisy], 'outside', withinMm);
    // 5 ms on a machine at leisure
    expect(performance.now() - start).toBeLessThan(500);
    expect(edgesOfRegion(loops).length).toBeGreaterThan(9_900);
    for (const { x, y } of loops.flatMap((loop) => (loop.kind === 'path' ? loop.vertices : [])))
      expect(Math.abs(Math.hypot(x, y) - 300)).toBeLessThan(0.101);
  });
});

it('a run of points is told by the line and the arc it stands for', () => {
  const onArc = Array.from({ length: 401 }, (_, i) => polar(vec(20, 0), 5, (i / 400 - 0.5) * Math.PI));
  const edges = edgesThrough([vec(-20, -5), ...onArc], withinMm);
  expect(edges.map(({ kind }) => kind)).toEqual(['line', 'arc']);
  expect(edges[1]).toMatchObject({ radius: expect.closeTo(5, 3), sweepRad: expect.closeTo(Math.PI, 3) });
});
