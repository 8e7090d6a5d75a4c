import { add, cross, dot, scale, sub, type Vec } from '../plane/vec.ts';
import { forBlocksWithin, type PointBlocks } from './point-blocks.ts';
import type { LaidLine } from './straight-lines.ts';
import { leastTurnRad, shortMm } from './tolerances.ts';

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

/** The corner two laid lines make, with no arc in it yet; null where they meet nowhere within metal. */
export function cornerBetween(from: LaidLine, onto: LaidLine): StraightCorner | null {
  const sine = cross(from.along, onto.along);
  if (Math.abs(sine) < leastTurnRad) return null;
  const [apartX, apartY] = [onto.at.x - from.at.x, onto.at.y - from.at.y];
  const fromMm = (apartX * onto.along.y - apartY * onto.along.x) / sine;
  const ontoMm = (apartX * from.along.y - apartY * from.along.x) / sine;
  if (fromMm > from.ahead.alongMm || ontoMm < onto.back.alongMm) return null;
  if (fromMm <= from.back.alongMm || ontoMm >= onto.ahead.alongMm) return null;
  const turnRad = Math.atan2(sine, dot(from.along, onto.along));
  return { at: add(from.at, scale(from.along, fromMm)), fromMm, ontoMm, turnRad, arcMm: 0, radiusMm: 0 };
}

/** A corner as it is where it stands out; an internal one with an arc of a radius, mm. */
export function withArc(corner: StraightCorner, radiusMm: number): StraightCorner {
  return corner.turnRad > 0 ? corner : { ...corner, arcMm: radiusMm * Math.tan(-corner.turnRad / 2), radiusMm };
}

/**
 * A corner as a cutter may make it: as it is where it stands out; an internal one with an arc of the least radius, and
 * with the largest up to `widestMm` that leaves none of the edge standing.
 */
export function corneredWays(
  corner: StraightCorner,
  [from, onto]: readonly [LaidLine, LaidLine],
  edge: PointBlocks,
  radiusMm: number,
  widestMm: number,
): StraightCorner[] {
  if (corner.turnRad > 0) return [corner];
  const roomMm = roomFor(corner.at, from.along, onto.along, edge, widestMm, radiusMm - shortMm);
  if (roomMm < radiusMm - shortMm) return [];
  const least = withArc(corner, radiusMm);
  return roomMm > radiusMm ? [least, withArc(corner, roomMm)] : [least];
}

/**
 * The largest radius, up to one, of an arc laid in a corner that leaves no point of the edge beyond it; where there is
 * less room than `leastMm`, something less than that.
 */
function roomFor(corner: Vec, from: Vec, onto: Vec, edge: PointBlocks, widestMm: number, leastMm: number): number {
  // inward along the bisector; an arc of radius R has its centre R·reach from the corner
  const inward = sub(onto, from);
  const bisector = scale(inward, 1 / Math.hypot(inward.x, inward.y));
  const reach = 1 / Math.abs(cross(bisector, from));
  const k = reach * reach - 1;
  const { xs, ys } = edge;
  let roomMm = widestMm;
  // what an arc leaves of the corner lies before its ends, cos²/sin of half the corner along the bisector
  const cusp = reach - 1 / reach;
  const range = (): [number, number] => [0, roomMm < leastMm ? -1 : cusp * roomMm];
  forBlocksWithin(edge, corner, bisector, range, (first, past) => {
    for (let i = first; i < past; i++) {
      const [x, y] = [(xs[i] as number) - corner.x, (ys[i] as number) - corner.y];
      const u = x * bisector.x + y * bisector.y;
      if (u <= 0 || u > cusp * roomMm) continue;
      // the larger radius of the two circles through the point that touch both lines
      const root = reach * reach * u * u - k * (x * x + y * y);
      if (root >= 0) roomMm = Math.min(roomMm, (reach * u + Math.sqrt(root)) / k);
    }
  });
  return roomMm;
}
