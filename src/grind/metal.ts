import type { Region } from '../geometry/loop.ts';
import { union } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import type { Polygons } from '../geometry/polygons.ts';
import { toleranceMm } from './cut-band.ts';

const known = new WeakMap<Region, Polygons>();

/** A region of metal as polygons that hold it, arcs within the tolerance of a cut; made once for as long as it is in use. */
export function metalOf(region: Region): Polygons {
  const metal = known.get(region) ?? union(polygonise(region, toleranceMm, 'outside'));
  known.set(region, metal);
  return metal;
}
