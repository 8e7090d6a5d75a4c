import type { Side } from '../../geometry/plane/arc-points.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import { union } from '../../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../geometry/polygons/polygonise.ts';
import type { Polygons } from '../../geometry/polygons/polygons.ts';

const known = new WeakMap<Region, Map<string, Polygons>>();

/**
 * A region of metal as polygons that hold it (`outside`) or lie in it (`inside`), arcs within `toleranceMm`; made once
 * for as long as the region is in use. Straight edges are the same on either side.
 */
export function metalOf(region: Region, toleranceMm: number, side: Side): Polygons {
  const made = known.get(region) ?? new Map<string, Polygons>();
  known.set(region, made);
  const key = isStraight(region) ? 'straight' : `${side} ${toleranceMm}`;
  const metal = made.get(key) ?? union(polygonise(region, toleranceMm, side));
  made.set(key, metal);
  return metal;
}

const isStraight = (region: Region): boolean =>
  region.every((loop) => loop.kind === 'path' && loop.vertices.every(({ bulge }) => bulge === 0));
