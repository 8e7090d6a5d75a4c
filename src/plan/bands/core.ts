import type { Vec } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { toleranceMm } from './tolerance.ts';

/** A place well within some metal; null where none of it is thicker than `thickMm`. */
export const coreOf = (metal: Polygons, thickMm: number): Vec | null =>
  offset(outlinesOf(metal), -thickMm / 2, toleranceMm, 'outside').polygons[0]?.[0] ?? null;
