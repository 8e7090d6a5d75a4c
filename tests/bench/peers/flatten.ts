import { Arc, Point, Polygon, Segment } from '@flatten-js/core';
import { edgesOf, moveRegion, type Region } from '../../../src/geometry/plane/loop.ts';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';

/** A polygon of Flatten, with arcs as arcs. */
export function flattenPolygon(region: Region, placement: Rigid): Polygon {
  const polygon = new Polygon();
  for (const loop of moveRegion(region, placement)) {
    const edges = edgesOf(loop).map((edge) => {
      if (edge.kind === 'line') return new Segment(pointAt(edge.a), pointAt(edge.b));
      const { centre, radius, startRad, sweepRad } = edge;
      return new Arc(pointAt(centre), radius, startRad, startRad + sweepRad, sweepRad > 0);
    });
    polygon.addFace(edges);
  }
  return polygon;
}

export const flattenDistance = (a: Polygon, b: Polygon): number => a.distanceTo(b as never)[0];

const pointAt = ({ x, y }: Vec): Point => new Point(x, y);
