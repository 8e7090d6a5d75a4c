import { offset } from '../polygons/offset.ts';
import { difference, engineErrorMm, intersection, union } from '../polygons/polygon-engine.ts';
import { polygonise } from '../polygons/polygonise.ts';
import { outlinesOf } from '../polygons/polygons.ts';
import type { Motion } from './motion.ts';
import { farthestMm } from './outline.ts';
import { insideOf, type Solid } from './solid.ts';
import { type Region, type RegionOptions, regionOf, sweepWithin } from './swept-region.ts';

/** What has to go of a solid so that another passes it, and what is then left; both may have no outlines. */
export interface Relief {
  readonly cut: Region;
  /** Keeps the clearance asked, or more, from the moving solid at every instant. */
  readonly left: Region;
}

/**
 * The least metal to take off the fixed solid so that the moving one keeps a clearance over one motion: the metal
 * within that distance of anything the moving solid passes over. The cut is never smaller than that, and what is left
 * never larger, than the truth.
 *
 * What is passed over is grown by convolution with a circle, as {@link sweptRegion} is found by convolution (Guibas,
 * Ramshaw and Stolfi, 1983). For several motions one after another, ask again with what the first has left.
 *
 * @param clearanceMm - 0 to 1e5 mm; at 0 the two will touch
 * @throws RangeError for the clearance, and for what {@link sweptRegion} says; TypeError for what {@link solid} did not make
 *
 * @example A block 100 mm wide stands 3 mm into the way of a bar that slides past, and is to clear it by 2 mm.
 * ```ts
 * import { passage, relief, slide, solid } from 'fettle/motion';
 *
 * const block = solid([[-50, 0], [50, 0], [50, 30], [-50, 30]]);
 * const bar = solid([[-200, 27], [-120, 27], [-120, 60], [-200, 60]]);
 * const past = slide([320, 0]);
 * const { cut, left } = relief(block, bar, past, 2);
 * console.log(cut.areaMm2.toFixed(1)); // 500.0
 * const cleared = passage(solid(...left.outlines), bar, past);
 * console.log(cleared.state, cleared.distanceMm >= 2); // clear true
 * ```
 */
export function relief(
  fixed: Solid,
  moving: Solid,
  motion: Motion,
  clearanceMm: number,
  options: RegionOptions = {},
): Relief {
  if (!(clearanceMm >= 0 && clearanceMm <= farthestMm)) {
    throw new RangeError(`clearanceMm: found ${clearanceMm}, expected 0 to ${farthestMm}`);
  }
  const { region } = insideOf(fixed);
  const swept = sweepWithin(moving, motion, options, 'outside');
  const { toleranceMm } = swept;
  const room = offset(outlinesOf(swept.polygons), clearanceMm + snapMm, toleranceMm, 'outside');
  const metal = union(polygonise(region, toleranceMm, 'outside'));
  const boundMm = swept.boundMm + snapMm + room.boundMm + 2 * engineErrorMm;
  return {
    cut: regionOf(intersection(metal, room.polygons), boundMm, 'outside'),
    left: regionOf(difference(metal, room.polygons), boundMm, 'inside'),
  };
}

/** More than the engine can move an outline on its way through sweep, offset and cut. */
const snapMm = 4 * engineErrorMm;
