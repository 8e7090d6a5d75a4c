import type { Region } from '../geometry/loop.ts';
import { offset } from '../geometry/offset.ts';
import { intersection } from '../geometry/polygon-engine.ts';
import { areaMm2, outlinesOf, type Polygons } from '../geometry/polygons.ts';
import type { Vec } from '../geometry/vec.ts';
import { heldToMm } from './bands.ts';
import { metalOf } from './metal.ts';
import { toleranceMm } from './tolerance.ts';

/** What a cut takes from a region, and a place well within that. */
export interface Bite {
  readonly areaMm2: number;
  readonly at: Vec;
}

/** What a cut would take from a region; null where it only grazes it. */
export function biteOf(cut: Polygons, region: Region): Bite | null {
  const bite = intersection(cut, metalOf(region, toleranceMm, 'inside'));
  const at = offset(outlinesOf(bite), -heldToMm / 2, toleranceMm, 'outside').polygons[0]?.[0];
  return at === undefined ? null : { areaMm2: areaMm2(bite), at };
}
