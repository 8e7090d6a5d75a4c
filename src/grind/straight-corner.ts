import { add, cross, dot, scale, sub, type Vec } from '../geometry/vec.ts';
import type { LaidLine } from './straight-lines.ts';

/** Where one laid line is left for the next; lengths along each from its own `at`, mm. */
export interface StraightCorner {
  readonly at: Vec;
  readonly fromMm: number;
  readonly ontoMm: number;
  /** How much of either line the arc in it takes, and its radius: 0 where the corner stands out of the metal left. */
  readonly arcMm: number;
  readonly radiusMm: number;
  /** The turn of the edge, negative to the right, which is into the cut; rad. */
  readonly turnRad: number;
}

/** Below this the lines are taken as one. */
const leastTurnRad = 1e-4;

/** A round cutter leaves a corner so much short at most. */
const shortMm = 1.5e-3;

/**
 * The corners two laid lines may make: one that stands out, or internal ones with an arc of the least radius and with
 * the largest up to `widestMm` that leaves none of the edge standing.
 */
export function cornersBetween(
  from: LaidLine,
  onto: LaidLine,
  edge: readonly Vec[],
  radiusMm: number,
  widestMm: number,
): StraightCorner[] {
  const sine = cross(from.along, onto.along);
  const turnRad = Math.atan2(sine, dot(from.along, onto.along));
  if (Math.abs(turnRad) < leastTurnRad || Math.abs(sine) < leastTurnRad) return [];
  const apart = sub(onto.at, from.at);
  const fromMm = cross(apart, onto.along) / sine;
  const ontoMm = cross(apart, from.along) / sine;
  if (fromMm > from.ahead.alongMm || ontoMm < onto.back.alongMm) return [];
  if (fromMm <= from.back.alongMm || ontoMm >= onto.ahead.alongMm) return [];
  const corner = { at: add(from.at, scale(from.along, fromMm)), fromMm, ontoMm, turnRad };
  if (turnRad > 0) return [{ ...corner, arcMm: 0, radiusMm: 0 }];
  const tangent = Math.tan(-turnRad / 2);
  if (radiusMm * tangent > Math.min(fromMm - from.back.alongMm, onto.ahead.alongMm - ontoMm)) return [];
  const roomMm = roomFor(corner.at, from.along, onto.along, edge, widestMm);
  if (roomMm < radiusMm - shortMm) return [];
  return [...new Set([radiusMm, Math.max(radiusMm, roomMm)])].map((mm) => ({
    ...corner,
    arcMm: mm * tangent,
    radiusMm: mm,
  }));
}

/** The largest radius, up to one, of an arc laid in a corner that leaves no point of the edge beyond it. */
function roomFor(corner: Vec, from: Vec, onto: Vec, edge: readonly Vec[], widestMm: number): number {
  // inward along the bisector; an arc of radius R has its centre R·reach from the corner
  const inward = sub(onto, from);
  const bisector = scale(inward, 1 / Math.hypot(inward.x, inward.y));
  const reach = 1 / Math.abs(cross(bisector, from));
  let roomMm = widestMm;
  for (const p of edge) {
    const out = sub(p, corner);
    const u = dot(out, bisector);
    if (u <= 0 || u > reach * roomMm) continue;
    const squared = dot(out, out);
    const k = reach * reach - 1;
    // the larger radius of the two circles through the point that touch both lines
    const root = reach * reach * u * u - k * squared;
    if (root >= 0) roomMm = Math.min(roomMm, (reach * u + Math.sqrt(root)) / k);
  }
  return roomMm;
}
