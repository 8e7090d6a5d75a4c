import { pointAt } from '../geometry/motion/motion.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { distance } from '../geometry/plane/vec.ts';
import type { Joint } from './joint.ts';

/** How far a moving dowel hole still stands from its dowel, measured square to the crank. */
export interface DowelGap {
  readonly fixed: string;
  readonly moving: string;
  readonly gapMm: number;
}

/**
 * What a rule shows between each dowel and its hole at an instant of the way in: the distance in the plane of the
 * faces, mm. `leg` counts from 1, `at` runs 0–1 along it; empty where there is no such leg.
 */
export function dowelGaps({ fit }: Pick<Joint, 'fit'>, leg: number, at: number): readonly DowelGap[] {
  const way = fit.legs[leg - 1];
  if (way === undefined) return [];
  const start = rigid(way.from.turnRad, way.from.shift);
  return fit.dowels.map(({ fixed, moving }) => ({
    fixed: fixed.id,
    moving: moving.id,
    gapMm: distance(fixed.at, pointAt(start, way.motion, at, moving.at)),
  }));
}
