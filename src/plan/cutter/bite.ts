import type { Region } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { intersection, pieces } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { heldToMm } from '../bands/bands.ts';
import { metalOf } from '../bands/metal.ts';
import { toleranceMm } from '../bands/tolerance.ts';

/** What a cut takes from a region, and a place well within that. */
export interface Bite {
  readonly areaMm2: number;
  readonly at: Vec;
}

/** A place well within some metal; null where none of it is thicker than what clearances are held to. */
export const coreOf = (metal: Polygons): Vec | null =>
  offset(outlinesOf(metal), -heldToMm / 2, toleranceMm, 'outside').polygons[0]?.[0] ?? null;

/** Metal without the films that outlines which run on one another leave. */
export const withoutFilms = (metal: Polygons): Polygons =>
  pieces(metal)
    .filter((piece) => coreOf(piece) !== null)
    .flat();

/** What a cut would take from a region; null where it only grazes it. */
export function biteOf(cut: Polygons, region: Region): Bite | null {
  const bite = intersection(cut, metalOf(region, toleranceMm, 'inside'));
  const at = coreOf(bite);
  return at === null ? null : { areaMm2: areaMm2(bite), at };
}
