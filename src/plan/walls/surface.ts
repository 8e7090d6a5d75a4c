import { regionContains } from '../../geometry/motion/containment.ts';
import type { OutlineTree } from '../../geometry/motion/outline-tree.ts';
import { rayCrossings } from '../../geometry/motion/ray-crossings.ts';
import { type Box, boxesMeet } from '../../geometry/plane/edge-box.ts';
import { add, distance, leftOf, lerp, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Polygon, Polygons } from '../../geometry/polygons/polygons.ts';

/** A place on the surface of metal, and the unit vector square to it into the metal. */
export interface SurfacePlace {
  readonly at: Vec;
  readonly inward: Vec;
}

/** From place to place along a surface, mm. */
const stepMm = 0.5;

/** The way in is square to the surface as it runs this far to either side, mm: the noise of a scan turns it nowhere. */
const lookMm = 1;

/** Just within the surface, mm. */
const hairMm = 0.01;

/** Places along the outlines of metal (which lies on their left) that lie in a box, every half millimetre and at vertices. */
export const surfaceIn = (metal: Polygons, box: Box): SurfacePlace[] =>
  metal.flatMap((polygon) =>
    polygon.flatMap((a, i) => {
      const b = endOf(polygon, i);
      if (!boxesMeet(boxOfPoints(a, b), box, 0)) return [];
      const count = Math.max(1, Math.ceil(distance(a, b) / stepMm));
      return Array.from({ length: count }, (_, k) => lerp(a, b, k / count))
        .filter((at) => boxesMeet(boxOfPoints(at, at), box, 0))
        .map((at) => ({ at, inward: inwardAt(polygon, i, at) }));
    }),
  );

const endOf = (polygon: Polygon, i: number): Vec => polygon[(i + 1) % polygon.length] as Vec;

const boxOfPoints = (a: Vec, b: Vec): Box => ({
  minX: Math.min(a.x, b.x),
  minY: Math.min(a.y, b.y),
  maxX: Math.max(a.x, b.x),
  maxY: Math.max(a.y, b.y),
});

/** Square to the chord between the places where the outline leaves a circle about a place on one of its edges. */
function inwardAt(polygon: Polygon, edge: number, at: Vec): Vec {
  const n = polygon.length;
  const leaves = (step: 1 | -1): Vec => {
    for (let k = 0; k < n; k++) {
      const p = polygon[(step === 1 ? edge + 1 + k : edge - k + n) % n] as Vec;
      const mm = distance(at, p);
      if (mm >= lookMm) return add(at, scale(sub(p, at), lookMm / mm));
    }
    return at;
  };
  const [before, after] = [leaves(-1), leaves(1)];
  return distance(before, after) === 0 ? vec(0, 0) : leftOf(before, after);
}

/** How much a cut takes at a place of the surface, square to it, mm; 0 where it takes nothing there. */
export function takenAt({ at, inward }: SurfacePlace, cut: OutlineTree): number {
  const start = add(at, scale(inward, hairMm));
  if (cut.edgeCount === 0 || !regionContains(cut, start.x, start.y)) return 0;
  const out = rayCrossings(cut, start, inward).filter((mm) => mm > 0);
  return out.length === 0 ? 0 : hairMm + Math.min(...out);
}
