import type { Region } from '../plane/loop.ts';
import { metalOnLeft, outlineAreaMm2 } from './metal-on-left.ts';
import { intersection } from './polygon-engine.ts';
import { polygonise } from './polygonise.ts';
import { areaMm2 } from './polygons.ts';

/** The area of a region by even-odd nesting, mm², exact for arcs. */
export const regionAreaMm2 = (region: Region): number =>
  metalOnLeft(region).reduce((sum, outline) => sum + outlineAreaMm2(outline), 0);

/** The area two regions share, mm²; arcs are taken within `toleranceMm`, on the inside. */
export const regionOverlapAreaMm2 = (a: Region, b: Region, toleranceMm = 1e-3): number =>
  areaMm2(intersection(polygonise(a, toleranceMm, 'inside'), polygonise(b, toleranceMm, 'inside')));
