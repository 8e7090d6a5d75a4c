import type { Region } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { intersection, pieces } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygons } from '../../geometry/polygons/polygons.ts';
import { heldToMm } from '../bands/bands.ts';
import { coreOf, isThicker } from '../bands/core.ts';
import { metalOf } from '../bands/metal.ts';
import { toleranceMm } from '../bands/tolerance.ts';

/** What a cut takes from a region, and a place well within that. */
export interface Bite {
  readonly areaMm2: number;
  readonly at: Vec;
}

/** The pieces of some metal that are thicker than what clearances are held to: no films that outlines run on one another leave. */
export const thickPieces = (metal: Polygons): Polygons =>
  pieces(metal)
    .filter((piece) => isThicker(piece, heldToMm))
    .flat();

/** What a cut would take from a region; null where it only grazes it. */
export function biteOf(cut: Polygons, region: Region): Bite | null {
  const bite = intersection(cut, metalOf(region, toleranceMm, 'inside'));
  const at = coreOf(bite, heldToMm);
  return at === null ? null : { areaMm2: areaMm2(bite), at };
}
