import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';
import { subdivided } from './outlines.ts';

/** How finely outlines and turns are looked through: these are castings in the making, and no answer. */
const stepMm = 1;
const stepDeg = 0.25;

/**
 * How near to the crank anything of some outlines comes on a turn home from `turnDeg`, between two angles: metal that
 * reaches out to there is just touched. Null where nothing passes.
 */
export function sweptReachMm(
  outlines: readonly Polygon[],
  turnDeg: number,
  fromDeg: number,
  toDeg: number,
): number | null {
  const points = outlines.flatMap((outline) => subdivided(outline, stepMm));
  let leastMm = Number.POSITIVE_INFINITY;
  for (const { x, y } of points) {
    const radiusMm = Math.hypot(x, y);
    const homeDeg = (Math.atan2(y, x) * 180) / Math.PI;
    if (radiusMm < leastMm && passes(homeDeg, turnDeg, fromDeg, toDeg)) leastMm = radiusMm;
  }
  return leastMm === Number.POSITIVE_INFINITY ? null : leastMm;
}

function passes(homeDeg: number, turnDeg: number, fromDeg: number, toDeg: number): boolean {
  const steps = Math.ceil(Math.abs(turnDeg) / stepDeg);
  for (let i = 0; i <= steps; i++) {
    const deg = homeDeg + (turnDeg * i) / steps;
    if ([deg, deg - 360, deg + 360].some((round) => round >= fromDeg && round <= toDeg)) return true;
  }
  return false;
}
