import { difference, intersection, union } from '../geometry/polygon-engine.ts';
import { areaMm2, type Polygons } from '../geometry/polygons.ts';
import { cornerRelief, cornerSlackMm, type Narrow } from './corner-relief.ts';

/** How a cut was made one that a round cutter can make. */
export type CutterWay = 'as-needed' | 'corners' | 'uniform';

/** A cut that a cutter can make: every point of it lies in a disc of the cutter clear of the metal left. */
export interface CutterShape {
  readonly way: CutterWay;
  /** Holds the cut that the clearance needs. */
  readonly cut: Polygons;
  readonly narrow: readonly Narrow[];
  /** How far a corner may be short of the cutter's radius, as the metal left in it. */
  readonly boundMm: number;
}

/** More metal than this, mm², is worth speaking of. */
const extraMm2 = 1e-3;

/**
 * The lighter of two cuts that hold a needed one: with the corners relieved where the cutter does not get in, or grown
 * all along to where a disc of its radius has room (`grown`). One that would bite metal that must stay (`bites`) only
 * where the other would too.
 */
export function shapeForCutter(
  metal: Polygons,
  needed: Polygons,
  grown: () => Polygons,
  beside: Polygons,
  radiusMm: number,
  bites: (cut: Polygons) => boolean,
): CutterShape {
  const relief = cornerRelief(metal, needed, beside, radiusMm);
  if (relief !== null && areaMm2(relief.extra) < extraMm2 && relief.narrow.length === 0) {
    const cut = relief.extra.length === 0 ? needed : union([...needed, ...relief.extra]);
    return { way: 'as-needed', cut, narrow: [], boundMm: cornerSlackMm };
  }
  const uniform: CutterShape = {
    way: 'uniform',
    cut: union([...needed, ...intersection(metal, grown())]),
    narrow: [],
    boundMm: 0,
  };
  if (relief === null) return uniform;
  const corners: CutterShape = {
    way: 'corners',
    cut: union([...needed, ...relief.extra]),
    narrow: relief.narrow,
    boundMm: cornerSlackMm,
  };
  const [lighter, heavier] = areaMm2(corners.cut) <= areaMm2(uniform.cut) ? [corners, uniform] : [uniform, corners];
  return bites(difference(lighter.cut, needed)) && !bites(difference(heavier.cut, needed)) ? heavier : lighter;
}
