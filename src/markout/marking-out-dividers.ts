import { cross, distance, scale, sub, type Vec } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';

/** Two holes to set dividers or trammels from. */
export type DividerHoles = readonly [Hole, Hole];

/**
 * How deep dividers stand that are set from a hole, mm from the face of its part: on the end of the dowel, less than 0,
 * or where the hole opens. Null where it may be either: then there is nothing to set them by.
 */
export function standsAtMm(joint: Joint, part: Part, hole: Hole): number | null {
  if (hole.proudMm > 0) return -hole.proudMm;
  const opensAtMm = hole.depth?.fromMm ?? 0;
  if (hole.kind !== 'dowel' || hole.proudStated) return opensAtMm;
  const pair = joint.fit.dowels.find((pair) => pair[part].id === hole.id);
  const mate = pair?.[otherPart(part)];
  return mate !== undefined && mate.proudMm > 0 ? opensAtMm : null;
}

/** Holes looked at where there are no dowels: those nearest to the work. */
const mostHoles = 8;
/** Centres closer together than this find nothing, mm. */
const leastSpacingMm = 1;

/**
 * The two holes of a part that all places are measured from: its dowels, or small holes where it has no two of them. Of
 * several pairs the one whose arcs cross most squarely at the place where they cross worst; null where there is none.
 */
export function dividerHoles(joint: Joint, part: Part, places: readonly Vec[]): DividerHoles | null {
  const holes = candidates(joint, part, places);
  let best: DividerHoles | null = null;
  let squarest = -1;
  for (const [i, a] of holes.entries()) {
    for (const b of holes.slice(i + 1)) {
      if (distance(a.at, b.at) < leastSpacingMm) continue;
      const worst = Math.min(...places.map((at) => squareness(at, a.at, b.at)));
      if (worst > squarest) [squarest, best] = [worst, [a, b]];
    }
  }
  return best;
}

function candidates(joint: Joint, part: Part, places: readonly Vec[]): readonly Hole[] {
  const { holes } = joint[part];
  const paired = joint.fit.dowels.map((pair) => pair[part]);
  const dowels = paired.length > 1 ? paired : holes.filter(({ kind }) => kind === 'dowel');
  if (dowels.length > 1) return dowels.slice(0, mostHoles);
  const [first] = places;
  const drilled = holes.filter(({ kind }) => kind !== 'planned' && kind !== 'bore');
  if (first === undefined) return drilled.slice(0, mostHoles);
  return drilled.toSorted((a, b) => distance(a.at, first) - distance(b.at, first)).slice(0, mostHoles);
}

/** The sine of the angle at which arcs from two centres cross at a place. */
function squareness(at: Vec, a: Vec, b: Vec): number {
  const [toA, toB] = [sub(a, at), sub(b, at)];
  const lengths = Math.hypot(toA.x, toA.y) * Math.hypot(toB.x, toB.y);
  return lengths === 0 ? 0 : Math.abs(cross(scale(toA, 1 / lengths), toB));
}
