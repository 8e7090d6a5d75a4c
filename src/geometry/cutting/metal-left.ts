import { offset } from '../polygons/offset.ts';
import { difference } from '../polygons/polygon-engine.ts';
import { outlinesOf, type Polygons } from '../polygons/polygons.ts';
import { filmMm } from './tolerances.ts';

/** The metal that stays when a region that lies in it, and shares outlines with it, is removed. */
export const metalLeft = (metal: Polygons, removed: Polygons): Polygons =>
  difference(metal, offset(outlinesOf(removed), filmMm, filmMm, 'outside').polygons);
