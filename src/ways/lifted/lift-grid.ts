import { length, type Vec, vec } from '../../geometry/plane/vec.ts';

/** How far the part may be carried aside before it is on the axis, in any direction, and how finely that is looked at; mm. */
export interface Lift {
  readonly mostMm: number;
  readonly stepMm: number;
}

/** The most that is looked at, mm: farther aside is another way round. */
export const mostLiftMm = 200;

/** More places than these are not looked at: each is a map of its own. */
export const mostShifts = 400;

/** The least step for a distance that keeps to so many places, mm: a square grid has π(most/step)² of them. */
export const leastStepMm = (mostMm: number): number => mostMm / Math.sqrt(mostShifts / Math.PI);

const hairMm = 1e-9;

/** The places of a square grid within that distance of the axis, the nearest first, and of those as near the highest. */
export function shiftsOf({ mostMm, stepMm }: Lift): Vec[] {
  const steps = Math.floor(mostMm / stepMm + hairMm);
  const along = Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * stepMm);
  return along
    .flatMap((x) => along.map((y) => vec(x, y)))
    .filter((shift) => length(shift) > 0 && length(shift) <= mostMm + hairMm)
    .sort((a, b) => Math.round((length(a) - length(b)) / hairMm) || b.y - a.y || a.x - b.x);
}
