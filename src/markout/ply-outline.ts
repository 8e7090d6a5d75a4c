import type { Region } from '../geometry/plane/loop.ts';
import { loopsWithArcs } from '../geometry/polygons/arcs-of-polygons.ts';
import type { Polygons } from '../geometry/polygons/polygons.ts';
import { remembered } from '../geometry/remembered.ts';
import { arcsWithinMm } from '../plan/bands/tolerance.ts';

const known = remembered<Region>(1);

/** A piece of ply as it is sawn, lines and true arcs: never larger than it was shaped, so that it still fits. */
export const plyOutline = (piece: Polygons): Region =>
  known(piece, 'arcs', () => loopsWithArcs(piece, 'inside', arcsWithinMm).loops);
