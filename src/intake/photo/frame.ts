import { add, distance, scale, sub, type Vec } from '../../geometry/plane/vec.ts';
import type { Homography } from './homography.ts';

/** Where a set of points has its middle, and how wide it spreads. */
export interface Frame {
  readonly middle: Vec;
  readonly size: number;
}

/** About the points' middle, with a mean distance of √2 from it. */
export function frameOf(places: readonly Vec[]): Frame {
  const middle = scale(places.reduce(add), 1 / places.length);
  return { middle, size: places.reduce((sum, p) => sum + distance(p, middle), 0) / places.length / Math.SQRT2 };
}

export const framed = ({ middle, size }: Frame, p: Vec): Vec => scale(sub(p, middle), 1 / size);

export const framing = ({ middle, size }: Frame): Homography => [1, 0, -middle.x, 0, 1, -middle.y, 0, 0, size];

export const unframing = ({ middle, size }: Frame): Homography => [size, 0, middle.x, 0, size, middle.y, 0, 0, 1];
