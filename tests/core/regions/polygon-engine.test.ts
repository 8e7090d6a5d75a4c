import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { moveRegion } from '../../../src/geometry/plane/loop.ts';
import { rigid } from '../../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../../src/geometry/plane/vec.ts';
import { difference, intersection, pieces, union } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2, type Polygons, signedAreaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { GeosPlane } from '../../support/oracles/geos-plane.ts';
import { Random } from '../../support/random.ts';
import { randomRegion } from '../../support/random-outlines.ts';

/** Two random solids that lie over one another, near the origin or at the edge of all a job may hold. */
function randomPair(seed: number): { a: Polygons; b: Polygons; lengthMm: number } {
  const random = new Random(seed);
  const place = random.chance(0.3) ? vec(random.pick([-1, 1]) * 99_000, random.pick([-1, 1]) * 99_000) : vec(0, 0);
  const shift = polar(place, random.between(0, 60), random.between(-4, 4));
  const a = polygonise(moveRegion(randomRegion(random, 50), rigid(0, place)), 1e-3, 'outside');
  const b = polygonise(moveRegion(randomRegion(random, random.pick([10, 50])), rigid(1, shift)), 1e-3, 'outside');
  return { a, b, lengthMm: lengthOf(a) + lengthOf(b) };
}

const lengthOf = (polygons: Polygons): number =>
  polygons.reduce(
    (sum, ring) =>
      sum + ring.reduce((s, p, i) => s + Math.hypot(p.x - (ring.at(i - 1)?.x ?? 0), p.y - (ring.at(i - 1)?.y ?? 0)), 0),
    0,
  );

const seeds = Array.from({ length: 40 }, (_, i) => i);

/** A grid of 1e-6 mm may shift any edge by that much. */
const slackMm = 2e-6;

describe('areas of union, intersection and difference', () => {
  let geos: GeosPlane;
  beforeAll(async () => {
    geos = await GeosPlane.start();
  });
  afterEach(() => geos.free());

  it.each(seeds)('are those of GEOS on pair %i', (seed) => {
    const { a, b, lengthMm } = randomPair(seed);
    const [ga, gb] = [geos.shape(a), geos.shape(b)];
    const slack = slackMm * lengthMm;
    expect(Math.abs(areaMm2(union([...a, ...b])) - geos.areaMm2(geos.union(ga, gb)))).toBeLessThan(slack);
    expect(Math.abs(areaMm2(intersection(a, b)) - geos.areaMm2(geos.intersection(ga, gb)))).toBeLessThan(slack);
    expect(Math.abs(areaMm2(difference(a, b)) - geos.areaMm2(geos.difference(ga, gb)))).toBeLessThan(slack);
  });
});

describe('areas of intersection', () => {
  const factory = new GeometryFactory();
  const polygonOf = (polygons: Polygons): unknown => {
    const rings = polygons.map((ring) =>
      factory.createLinearRing([...ring, ring[0] ?? vec(0, 0)].map(({ x, y }) => new Coordinate(x, y))),
    );
    const [outline, ...holes] = rings;
    return factory.createPolygon(outline, holes);
  };

  it.each(seeds.slice(0, 20))('are those of JTS on pair %i', (seed) => {
    const { a, b, lengthMm } = randomPair(seed);
    const outlineFirst = (p: Polygons): Polygons => p.toSorted((q, r) => signedAreaMm2(r) - signedAreaMm2(q));
    const shared = OverlayOp.intersection(polygonOf(outlineFirst(a)), polygonOf(outlineFirst(b)));
    expect(Math.abs(areaMm2(intersection(a, b)) - shared.getArea())).toBeLessThan(slackMm * lengthMm);
  });
});

describe('the engine', () => {
  const square = (x: number, y: number, side: number) => [
    vec(x, y),
    vec(x + side, y),
    vec(x + side, y + side),
    vec(x, y + side),
  ];

  it('parts a solid into its pieces, each with its own holes', () => {
    const hole = square(2, 2, 6).toReversed();
    const island = square(4, 4, 2);
    const parts = pieces([square(0, 0, 10), hole, island, square(20, 0, 5)]);
    expect(parts.map(areaMm2).sort((a, b) => a - b)).toEqual([4, 25, 64]);
  });

  it('gives outlines that run anticlockwise and holes that run clockwise', () => {
    const ring = difference([square(0, 0, 10)], [square(2, 2, 6)]);
    expect(ring.map(signedAreaMm2).sort((a, b) => a - b)).toEqual([-36, 100]);
  });

  it('takes polygons that enclose nothing for nothing', () => {
    expect(union([[], [vec(0, 0)], [vec(0, 0), vec(1, 1)]])).toEqual([]);
  });

  it('keeps points of its grid to the last bit, so that rounding an answer changes nothing', () => {
    const corner = vec(99_999.123457, -99_999.765431);
    const [polygon] = union([[corner, vec(99_999.5, -99_999.7), vec(99_999.2, -99_999.1)]]);
    expect(polygon).toContainEqual(corner);
  });
});
