import { regionContains } from '../../geometry/motion/containment.ts';
import type { OutlineTree } from '../../geometry/motion/outline-tree.ts';
import { rayCrossings } from '../../geometry/motion/ray-crossings.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
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
export function surfaceIn(metal: Polygons, box: Box): SurfacePlace[] {
  const places: SurfacePlace[] = [];
  for (const polygon of metal) {
    for (let i = 0; i < polygon.length; i++) {
      const [a, b] = [polygon[i] as Vec, polygon[(i + 1) % polygon.length] as Vec];
      if (!meets(box, a, b)) continue;
      const count = Math.max(1, Math.ceil(distance(a, b) / stepMm));
      for (let k = 0; k < count; k++) {
        const at = lerp(a, b, k / count);
        if (meets(box, at, at)) places.push({ at, inward: inwardAt(polygon, i, at) });
      }
    }
  }
  return places;
}

/** Whether a box meets the box round two points. */
const meets = ({ minX, minY, maxX, maxY }: Box, a: Vec, b: Vec): boolean =>
  Math.min(a.x, b.x) <= maxX && Math.max(a.x, b.x) >= minX && Math.min(a.y, b.y) <= maxY && Math.max(a.y, b.y) >= minY;

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
