import type { Motion as KernelMotion } from '../motion/motion.ts';
import { boxOfOutline, type OutlineTree } from '../motion/outline-tree.ts';
import { sweptRegion as sweepOfRegion } from '../motion/swept-region.ts';
import type { Rigid } from '../plane/rigid.ts';
import { length } from '../plane/vec.ts';
import { areaMm2, type Polygons } from '../polygons/polygons.ts';
import { soundPolygons } from '../polygons/sound-polygons.ts';
import { kernelMotion, kernelPlacement, type Motion, type Placement } from './motion.ts';
import { farthestMm, polygonOutline } from './outline.ts';
import type { Point } from './point.ts';
import { insideOf, type Solid } from './solid.ts';

/** Part of the plane, with arcs as fine polygons: outlines for {@link solid}, unless there are none. */
export interface Region {
  readonly outlines: readonly (readonly Point[])[];
  readonly areaMm2: number;
  /** No outline lies farther than this from the truth, and all of them on the one side, but for a grid of 1e-6 mm. */
  readonly boundMm: number;
}

/** How a region is to be worked out. */
export interface RegionOptions {
  /** Where the moving solid stands as the motion begins; as it was drawn where nothing is said. */
  readonly start?: Placement;
  /** How far arcs may lie from the truth, mm, 1e-6 or more; 1e-4 where nothing is said. */
  readonly toleranceMm?: number;
}

/**
 * Everything a solid passes over on one motion, its start and end included.
 *
 * It is the convolution of the solid with an arc or a segment, taken where its winding number is positive (Guibas,
 * Ramshaw and Stolfi, A kinetic framework for computational geometry, 1983); a full turn covers whole rings.
 *
 * @param options - besides start and tolerance, the `side` to err to: `outside`, never smaller than the truth, where
 * nothing is said, or `inside`, never larger
 * @throws RangeError as {@link passage} has it, for a tolerance that is too fine, and where the solid is carried beyond 5e5 mm from the origin; TypeError for what {@link solid} did not make
 *
 * @example A ring sector from 190 to 205 mm, 4° wide, turned 15° covers 19° of its ring.
 * ```ts
 * import { type Point, solid, sweptRegion, turn } from 'fettle/motion';
 *
 * const degree = Math.PI / 180;
 * const at = (radius: number, deg: number): Point => [radius * Math.cos(deg * degree), radius * Math.sin(deg * degree)];
 * const bulge = Math.tan(degree); // of an arc of 4°
 * const rib = solid([[...at(205, 0), bulge], at(205, 4), [...at(190, 4), -bulge], at(190, 0)]);
 * const swept = sweptRegion(rib, turn(15 * degree, [0, 0]));
 * console.log(swept.areaMm2.toFixed(1)); // 982.4
 * console.log(((205 ** 2 - 190 ** 2) / 2 * 19 * degree).toFixed(1)); // 982.4
 * ```
 */
export function sweptRegion(
  moving: Solid,
  motion: Motion,
  options: RegionOptions & { readonly side?: 'outside' | 'inside' } = {},
): Region {
  const { side = 'outside' } = options;
  const { polygons, boundMm } = sweepWithin(moving, motion, options, side);
  return regionOf(polygons, boundMm, side);
}

/** As the kernel has it, and within what its polygons are good for. */
export function sweepWithin(
  moving: Solid,
  motion: Motion,
  { start, toleranceMm = usualToleranceMm }: RegionOptions,
  side: 'outside' | 'inside',
): { readonly polygons: Polygons; readonly boundMm: number; readonly toleranceMm: number } {
  if (!(toleranceMm >= finestMm)) {
    throw new RangeError(`toleranceMm: found ${toleranceMm}, expected ${finestMm} or more`);
  }
  const { region, tree } = insideOf(moving);
  const [from, way] = [kernelPlacement(start), kernelMotion(motion)];
  if (carriedMm(farthestCornerMm(tree), from, way) > mostCarriedMm) {
    throw new RangeError(`the solid is carried beyond ${mostCarriedMm} mm from the origin`);
  }
  const swept = sweepOfRegion(region, from, way, toleranceMm, side);
  return { ...swept, toleranceMm };
}

/** Polygons as a region whose outlines neither touch nor cross, made so towards the side they err to. */
export function regionOf(polygons: Polygons, boundMm: number, side: 'outside' | 'inside'): Region {
  const sound = soundPolygons(polygons, side);
  return {
    outlines: sound.polygons.map(polygonOutline),
    areaMm2: areaMm2(sound.polygons),
    boundMm: boundMm + sound.boundMm,
  };
}

const usualToleranceMm = 1e-4;
const finestMm = 1e-6;
const mostCarriedMm = 5 * farthestMm;

/** No point of a solid that reaches so far from its own origin gets farther from that of the plane. */
function carriedMm(reachMm: number, start: Rigid, motion: KernelMotion): number {
  const placedMm = reachMm + length(start.shift);
  if (motion.kind === 'slide') return placedMm + length(motion.by);
  const chord = 2 * Math.sin(Math.min(Math.abs(motion.angleRad), Math.PI) / 2);
  return placedMm + chord * (placedMm + length(motion.pole));
}

/** How far the box round a solid reaches from the origin. */
function farthestCornerMm(tree: OutlineTree): number {
  const { minX, minY, maxX, maxY } = boxOfOutline(tree);
  return Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));
}
