import { offset } from '../polygons/offset.ts';
import { difference, engineErrorMm } from '../polygons/polygon-engine.ts';
import { outlinesOf, type Polygons } from '../polygons/polygons.ts';

/** What is removed is taken off with this much around it, mm: the engine's own error must leave no film of metal. */
const filmMm = 2 * engineErrorMm;

/** The metal that stays when a region that lies in it, and shares outlines with it, is removed. */
export const metalLeft = (metal: Polygons, removed: Polygons): Polygons =>
  difference(metal, offset(outlinesOf(removed), filmMm, filmMm, 'outside').polygons);
