import { type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import type { Random } from '../../support/random.ts';

/** Where a smooth error carries a point of the plane. */
export type Wander = (at: Vec) => Vec;

/** The lengths of the waves that an error is made of, mm: the shortest has to be many times its height, or outlines fold. */
export interface Waves {
  readonly shortestMm: number;
  readonly longestMm: number;
}

const wavesEachWay = 6;

/** A number of the normal distribution of mean 0, by Box and Muller. */
export const normal = (random: Random, sigma: number): number =>
  sigma * Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());

/**
 * A smooth random field: at any one point its part in any direction is all but normal with `sigmaMm`. An outline carried
 * by it wanders along its whole length, and crosses itself nowhere since the plane does not fold.
 */
export function wander(random: Random, sigmaMm: number, waves: Waves): Wander {
  const [x, y] = [waveSum(random, sigmaMm, waves), waveSum(random, sigmaMm, waves)];
  return (at) => vec(at.x + x(at), at.y + y(at));
}

function waveSum(random: Random, sigmaMm: number, { shortestMm, longestMm }: Waves): (at: Vec) => number {
  const heightMm = sigmaMm * Math.sqrt(2 / wavesEachWay);
  const waves = Array.from({ length: wavesEachWay }, () => {
    const perMm = (2 * Math.PI) / random.magnitude(shortestMm, longestMm);
    const direction = random.between(0, 2 * Math.PI);
    return { x: perMm * Math.cos(direction), y: perMm * Math.sin(direction), phase: random.between(0, 2 * Math.PI) };
  });
  return (at) => waves.reduce((sum, { x, y, phase }) => sum + heightMm * Math.cos(x * at.x + y * at.y + phase), 0);
}
