import type { Side } from '../geometry/arc-points.ts';
import type { Region } from '../geometry/loop.ts';
import { union } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import type { Polygons } from '../geometry/polygons.ts';
import { toleranceMm } from './cut-band.ts';

const known = { outside: new WeakMap<Region, Polygons>(), inside: new WeakMap<Region, Polygons>() };

/**
 * A region of metal as polygons that hold it, or lie in it, arcs within the tolerance of a cut; made once for as long as
 * it is in use.
 */
export function metalOf(region: Region, side: Side): Polygons {
  const metal = known[side].get(region) ?? made(region, side);
  known[side].set(region, metal);
  return metal;
}

/** Straight edges are the same on either side. */
function made(region: Region, side: Side): Polygons {
  const other = hasArcs(region) ? undefined : known[side === 'outside' ? 'inside' : 'outside'].get(region);
  return other ?? union(polygonise(region, toleranceMm, side));
}

const hasArcs = (region: Region): boolean =>
  region.some((loop) => loop.kind === 'circle' || loop.vertices.some(({ bulge }) => bulge !== 0));
