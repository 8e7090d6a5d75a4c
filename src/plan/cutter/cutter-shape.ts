import { cornerRelief, cornerSlackMm, type Narrow, type ReliefNeed } from '../../geometry/cutting/corner-relief.ts';
import { difference, intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygons } from '../../geometry/polygons/polygons.ts';

/** How a cut was made one that a round cutter can make. */
export type CutterWay = 'as-needed' | 'corners' | 'uniform';

/** A cut that a cutter can make: every point of it lies in a disc of the cutter clear of the metal left. */
export interface CutterShape {
  readonly way: CutterWay;
  /** Holds the cut that the clearance needs. */
  readonly cut: Polygons;
  /** What of it the clearance does not need. */
  readonly extra: Polygons;
  readonly narrow: readonly Narrow[];
  /** How far a corner may be short of the cutter's radius, as the metal left in it. */
  readonly boundMm: number;
}

/** More metal than this, mm², is worth speaking of. */
const extraMm2 = 1e-3;

/**
 * The lighter of two cuts that hold a needed one: with the corners relieved where the cutter does not get in, or grown
 * all along to where a disc of its radius has room (`grown`). One that would bite metal that must stay (`bites`, null
 * where none must) only where the other would too. `left` is the metal without what is needed. Yields wherever it may
 * have taken long.
 */
export function* shapeForCutter(
  { metal, left, needed, beside }: ReliefNeed,
  grown: () => Polygons,
  radiusMm: number,
  bites: ((cut: Polygons) => boolean) | null,
): Generator<void, CutterShape> {
  const relief = yield* cornerRelief({ metal, left, needed, beside }, radiusMm);
  if (relief !== null && areaMm2(relief.extra) < extraMm2 && relief.narrow.length === 0) {
    const cut = relief.bitten.length === 0 ? needed : union([...needed, ...relief.bitten]);
    return { way: 'as-needed', cut, extra: relief.extra, narrow: [], boundMm: cornerSlackMm(radiusMm) };
  }
  yield;
  const room = intersection(metal, grown());
  yield;
  if (relief === null) return uniformShape(needed, room);
  const corners: CutterShape = {
    way: 'corners',
    cut: union([...needed, ...relief.bitten]),
    extra: relief.extra,
    narrow: relief.narrow,
    boundMm: cornerSlackMm(radiusMm),
  };
  // the room alone is no more than the cut grown to it, which is made only where it may be taken
  if (bites === null && areaMm2(corners.cut) <= areaMm2(room)) return corners;
  const uniform = uniformShape(needed, room);
  const [lighter, heavier] = areaMm2(corners.cut) <= areaMm2(uniform.cut) ? [corners, uniform] : [uniform, corners];
  return bites?.(lighter.extra) && !bites(heavier.extra) ? heavier : lighter;
}

function uniformShape(needed: Polygons, room: Polygons): CutterShape {
  const cut = union([...needed, ...room]);
  return { way: 'uniform', cut, extra: difference(cut, needed), narrow: [], boundMm: 0 };
}
