import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Polygons } from '../geometry/polygons.ts';
import { add, cross, distance, dot, scale, sub, type Vec, vec } from '../geometry/vec.ts';
import { type Measured, pointAlong } from './marking-out-along.ts';

/** The three lines of a band as polygons, metal to come off on their left. */
export interface BandLines {
  readonly first: Polygons;
  readonly planned: Polygons;
  readonly last: Polygons;
}

/** What comes off at a place, square to the present outside there, to each of the three lines, mm. */
export interface TakeOff {
  readonly firstMm: number;
  readonly plannedMm: number;
  readonly lastMm: number;
  /** Where the last line is on that way. */
  readonly lastAt: Vec;
}

/** At the end of an edge, where nothing comes off, the way in is looked for this far along it, mm. */
const lookMm = 0.05;
/** Nearer to the outside than this, no way in can be told, mm. */
const tooNearMm = 1e-6;
/** How far the planned line may miss itself, mm. */
const slackMm = 1e-3;

/** What comes off at a place on the planned edge: from the nearest point of the present outside, on through the place. */
export function takeOffAlong(run: Measured, alongMm: number, present: OutlineTree, lines: BandLines): TakeOff {
  const at = pointAlong(run, alongMm);
  const { point: outside, distanceMm: plannedMm } = nearestOnOutline(present, at);
  const inward = inwardNear(run, alongMm, present);
  if (inward === null) return { firstMm: 0, plannedMm, lastMm: plannedMm, lastAt: at };
  const lastMm = Math.max(plannedMm, throughTo(lines.last, outside, inward, plannedMm));
  return {
    firstMm: Math.max(0, ...reached(lines.first, outside, inward).filter((mm) => mm <= plannedMm + slackMm)),
    plannedMm,
    lastMm,
    lastAt: add(outside, scale(inward, lastMm)),
  };
}

/** The first place at or past `leastMm` where a region ends on the way in; 0 where it does not reach there. */
export function throughTo(region: Polygons, from: Vec, inward: Vec, leastMm: number): number {
  const past = reached(region, from, inward).filter((mm) => mm > Math.max(leastMm - slackMm, slackMm));
  return past.length === 0 ? 0 : Math.min(...past);
}

/** How far along a ray it crosses the edges of a region, mm, in no order; of an edge's ends one belongs to it. */
function reached(region: Polygons, from: Vec, along: Vec): number[] {
  return region.flatMap((polygon) =>
    polygon.flatMap((a, i) => {
      const b = polygon[(i + 1) % polygon.length] as Vec;
      const [toA, toB] = [sub(a, from), sub(b, from)];
      const [left, right] = [cross(along, toA), cross(along, toB)];
      if (left > 0 === right > 0) return [];
      const mm = dot(along, add(toA, scale(sub(toB, toA), left / (left - right))));
      return mm >= 0 ? [mm] : [];
    }),
  );
}

/** The way from the present outside to a place of the edge, a unit vector; at an end, that of a place just along it. */
function inwardNear(run: Measured, alongMm: number, present: OutlineTree): Vec | null {
  for (const offset of [0, lookMm, -lookMm]) {
    const at = pointAlong(run, alongMm + offset);
    const { point, distanceMm } = nearestOnOutline(present, at);
    if (distanceMm > (offset === 0 ? lookMm / 2 : tooNearMm)) return scale(sub(at, point), 1 / distance(at, point));
  }
  return null;
}

/** The unit vector to the left of the way from one point to another: into the metal, for an outline run as metal has it. */
export function leftOf(from: Vec, to: Vec): Vec {
  const along = sub(to, from);
  return scale(vec(-along.y, along.x), 1 / distance(from, to));
}
