import type { Side } from '../plane/arc-points.ts';
import { loopFaults } from '../plane/loop-faults.ts';
import type { Vec } from '../plane/vec.ts';
import { difference, engineErrorMm, union } from './polygon-engine.ts';
import { loopsOf, type Polygon, type Polygons, withoutSlivers } from './polygons.ts';

/** Half the side of the patch put on a place where outlines meet; doubled while they still do. */
const patchMm = 4e-6;
const mostRounds = 8;

/**
 * The solid with outlines that neither touch nor cross, themselves or one another: where the engine leaves two that
 * meet, a speck is added (`outside`) or taken away (`inside`), and specks the other way are dropped. `boundMm` is how
 * far that may have moved an outline.
 */
export function soundPolygons(polygons: Polygons, side: Side): { polygons: Polygons; boundMm: number } {
  let sound = withoutSlivers(polygons, side);
  let half = patchMm;
  for (let round = 0; round < mostRounds; round++, half *= 2) {
    const faults = loopFaults(loopsOf(sound));
    if (faults.length === 0) break;
    const patches = union(faults.map(({ at }) => squareAt(at, half)));
    sound = withoutSlivers(side === 'outside' ? union([...sound, ...patches]) : difference(sound, patches), side);
  }
  return { polygons: sound, boundMm: half === patchMm ? 0 : Math.SQRT2 * half + engineErrorMm };
}

const squareAt = ({ x, y }: Vec, half: number): Polygon => [
  { x: x - half, y: y - half },
  { x: x + half, y: y - half },
  { x: x + half, y: y + half },
  { x: x - half, y: y + half },
];
