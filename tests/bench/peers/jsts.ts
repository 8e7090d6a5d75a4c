import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import IndexedFacetDistance from 'jsts/org/locationtech/jts/operation/distance/IndexedFacetDistance.js';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';
import { placedRing, type Ring } from './rings.ts';

const factory = new GeometryFactory();

/** A polygon of JSTS: its outline followed by its holes. */
export function jstsPolygon(rings: readonly Ring[], placement: Rigid): unknown {
  const [outline, ...holes] = rings.map((ring) => {
    const points = placedRing(ring, placement);
    const coordinates = Array.from(
      { length: points.length / 2 },
      (_, i) => new Coordinate(points[2 * i], points[2 * i + 1]),
    );
    return factory.createLinearRing(coordinates);
  });
  return factory.createPolygon(outline, holes);
}

/** By its index of facets, the quickest of its ways. */
export const jstsDistance = (a: unknown, b: unknown): number => IndexedFacetDistance.distance(a, b);
