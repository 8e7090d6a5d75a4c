import { distance, type Vec } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { areaMm2, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { toleranceMm } from './tolerance.ts';

/** A place well within some metal; null where none of it is thicker than `thickMm`. */
export const coreOf = (metal: Polygons, thickMm: number): Vec | null =>
  offset(outlinesOf(metal), -thickMm / 2, toleranceMm, 'outside').polygons[0]?.[0] ?? null;

/**
 * Whether some of it is thicker. Where no point lies farther than ρ from the outlines, strips of that width along the
 * edges, and sectors at inward corners, hold all of it: A ≤ ρP + ½ρ²πn for n corners. More than that is thicker for
 * certain, which is told at once of all but films.
 */
export function isThicker(metal: Polygons, thickMm: number): boolean {
  const rhoMm = thickMm / 2;
  const corners = metal.reduce((sum, polygon) => sum + polygon.length, 0);
  const filmMm2 =
    rhoMm * metal.reduce((sum, polygon) => sum + roundMm(polygon), 0) + (Math.PI * rhoMm ** 2 * corners) / 2;
  return areaMm2(metal) > filmMm2 || coreOf(metal, thickMm) !== null;
}

const roundMm = (polygon: readonly Vec[]): number =>
  polygon.reduce((sum, p, i) => sum + distance(p, polygon[(i + 1) % polygon.length] as Vec), 0);
