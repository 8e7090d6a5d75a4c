import { type ArcEdge, edgeOfBulge } from '../plane/edge.ts';
import { round6 } from '../plane/rounding.ts';
import { squaredToSegment } from '../plane/segment.ts';
import { cross, distance, dot, sub, type Vec, vec } from '../plane/vec.ts';
import type { Polygon } from './polygons.ts';

/** A line through points and how far to the right of it the one that takes its place may run. */
export interface Channel {
  readonly points: readonly Vec[];
  /** At each point the way across: 1 to the right of both its edges; nought where they fold back too sharply. */
  readonly across: readonly Vec[];
  readonly widthMm: number;
}

/** One arc, or straight edge where `bulge` is 0, in place of `count` edges from a point on. */
export interface Fit {
  readonly count: number;
  readonly bulge: number;
  /** How far from them it comes at most. */
  readonly offMm: number;
}

/** More than half a circle goes as two arcs. */
const mostBulge = 1;

/** At a turn sharper than some 120° the way across would be longer than 2, and a joint past the channel. */
const leastCosine = -0.49;

/** Of a closed polygon. */
export function channelOf(points: Polygon, widthMm: number): Channel {
  const normals = points.map((p, i) => rightOf(p, points[(i + 1) % points.length] as Vec));
  return { points, across: normals.map((n, i) => acrossBetween(normals.at(i - 1) as Vec, n)), widthMm };
}

/** Of a line with two ends. */
export function openChannel(points: readonly Vec[], widthMm: number): Channel {
  const normals = points.slice(1).map((p, i) => rightOf(points[i] as Vec, p));
  const across = points.map((_, i) => {
    const [before, after] = [normals[i - 1] ?? normals[i], normals[i] ?? normals[i - 1]];
    return acrossBetween(before as Vec, after as Vec);
  });
  return { points, across, widthMm };
}

function acrossBetween(before: Vec, after: Vec): Vec {
  const cosine = dot(before, after);
  if (cosine < leastCosine) return vec(0, 0);
  return vec((before.x + after.x) / (1 + cosine), (before.y + after.y) / (1 + cosine));
}

function rightOf(from: Vec, to: Vec): Vec {
  const along = distance(from, to);
  return vec((to.y - from.y) / along, (from.x - to.x) / along);
}

/** Where an arc may begin or end: half way across the channel at a point, on the grid of answers. */
export const jointAt = (channel: Channel, index: number): Vec => {
  const { x, y } = moved(channel, index, channel.widthMm / 2);
  return vec(round6(x), round6(y));
};

function moved({ points, across }: Channel, index: number, byMm: number): Vec {
  const [p, way] = [points[index % points.length] as Vec, across[index % points.length] as Vec];
  return vec(p.x + byMm * way.x, p.y + byMm * way.y);
}

/**
 * The one edge that may take the place of `count` edges from a point on; null where none keeps within the channel. Of
 * the arcs between two joints the greater the bulge, the further right they run: each point between sets how much it
 * must be at least and may be at most. The one half way between is then held against every edge.
 */
export function edgeOver(channel: Channel, from: number, count: number): Fit | null {
  const { points, widthMm } = channel;
  const [a, b] = [jointAt(channel, from), jointAt(channel, from + count)];
  let [least, most] = [-mostBulge, mostBulge];
  for (let i = from + 1; i < from + count; i++) {
    least = Math.max(least, bulgeOver(a, points[i % points.length] as Vec, b));
    most = Math.min(most, bulgeOver(a, moved(channel, i, widthMm), b));
    // so that no number at all is no fit either
    if (!(least <= most)) return null;
  }
  const bulge = least <= 0 && most >= 0 ? 0 : roundBulge((least + most) / 2);
  const stretch = Array.from({ length: count + 1 }, (_, i) => points[(from + i) % points.length] as Vec);
  const edge = edgeOfBulge(a, b, bulge);
  const offMm = edge.kind === 'line' ? offLineMm(a, b, stretch) : offArcMm(edge, stretch);
  return offMm !== null && offMm <= widthMm ? { count, bulge, offMm } : null;
}

/** The bulge of the arc from `a` over `p` to `b`; the angle at `p` is half the rest of the circle. */
function bulgeOver(a: Vec, p: Vec, b: Vec): number {
  const [ux, uy, vx, vy] = [a.x - p.x, a.y - p.y, b.x - p.x, b.y - p.y];
  // every point of every run comes by here, and a root is faster than hypotenuses
  return (vx * uy - vy * ux) / (Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy)) - (ux * vx + uy * vy));
}

/** Nine places keep an arc within 1e-6 of a chord 1000 long. */
const roundBulge = (bulge: number): number => Math.round(bulge * 1e9) / 1e9 + 0;

/** How far a stretch lies to the left of a straight edge at most; null where any of it lies right, or goes back. */
function offLineMm(a: Vec, b: Vec, stretch: readonly Vec[]): number | null {
  const [along, long] = [sub(b, a), distance(a, b)];
  let most = 0;
  for (const [i, p] of stretch.entries()) {
    const offMm = cross(along, sub(p, a)) / long;
    const before = stretch[i - 1] ?? p;
    if (offMm < 0 || dot(along, sub(p, before)) < 0) return null;
    most = Math.max(most, offMm);
  }
  return most;
}

/** How far a stretch lies to the left of an arc at most; null where any of it lies right, or goes back about its centre. */
function offArcMm({ centre, radius, sweepRad }: ArcEdge, stretch: readonly Vec[]): number | null {
  const radii = radiiOf(stretch, centre, sweepRad);
  return radii && offCircleMm(radii, radius, sweepRad);
}

/** The nearest and the farthest of some edges from a centre, mm. */
interface Radii {
  readonly leastMm: number;
  readonly mostMm: number;
}

/** How far edges lie to the left of a circle at most, run anticlockwise where `sense` is positive; null where any lies right. */
export function offCircleMm({ leastMm, mostMm }: Radii, radius: number, sense: number): number | null {
  if (sense > 0) return mostMm > radius ? null : radius - leastMm;
  return leastMm < radius ? null : mostMm - radius;
}

/** Of the edges through some points; null where they do not go round the centre all the way in the sense of a sign. */
export function radiiOf(points: readonly Vec[], centre: Vec, sense: number): Radii | null {
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (const [i, p] of points.entries()) {
    const b = sub(p, centre);
    most = Math.max(most, dot(b, b));
    if (i === 0) continue;
    const a = sub(points[i - 1] as Vec, centre);
    // nor where there is no centre
    if (!(sense * cross(a, b) > 0)) return null;
    least = Math.min(least, squaredToSegment(0, 0, a.x, a.y, b.x, b.y));
  }
  return { leastMm: Math.sqrt(least), mostMm: Math.sqrt(most) };
}
