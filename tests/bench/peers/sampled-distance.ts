import { identity } from '../../../src/geometry/plane/rigid.ts';
import { type Pair, sampledPlacements } from '../outlines.ts';
import type { Geos } from './geos.ts';
import { type Ring, ringsOf } from './rings.ts';

/** A pair as rings of straight edges. */
export const inRings = ({ fixed, moving }: Pair) => ({ fixed: ringsOf(fixed), moving: ringsOf(moving) });

/** The least of the distances at 200 positions of the turn, the fixed outline prepared once. */
export function sampledDistanceMm(
  geos: Geos,
  rings: { readonly fixed: readonly Ring[]; readonly moving: readonly Ring[] },
  pair: Pair,
): number {
  const fixed = geos.polygon(rings.fixed, identity);
  const prepared = geos.prepare(fixed);
  let leastMm = Number.POSITIVE_INFINITY;
  for (const placement of sampledPlacements(pair)) {
    const moving = geos.polygon(rings.moving, placement);
    leastMm = Math.min(leastMm, geos.preparedDistance(prepared, moving));
    geos.free(moving);
  }
  geos.freePrepared(prepared);
  geos.free(fixed);
  return leastMm;
}
