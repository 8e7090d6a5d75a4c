import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { distance, lerp, type Vec } from '../geometry/plane/vec.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import type { Polygon } from '../geometry/polygons/polygons.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';

/** A line of straight pieces; a closed one ends where it begins. */
export interface Run {
  readonly points: readonly Vec[];
  readonly closed: boolean;
}

/** The boundary of metal to come off, run with that metal on its left. */
export interface ReliefEdges {
  /** What the cut leaves: edges within the metal as it is. */
  readonly cuts: readonly Run[];
  /** The present outside that goes. */
  readonly outsides: readonly Run[];
}

/** An edge that keeps within this of the present outline lies on it, mm: above what a plan's lines err by. */
const onOutlineMm = 2e-3;
/** Shorter edges are specks, mm. */
const leastRunMm = 0.05;

/** Parts the boundary of metal to come off by the outline it is taken from. */
export function reliefEdges(relief: Region, present: OutlineTree): ReliefEdges {
  const runs = polygonise(relief, toleranceMm, 'outside').flatMap((polygon) => runsOf(polygon, present));
  const long = runs.filter(({ points }) => lengthOf(points) >= leastRunMm);
  return { cuts: long.filter(({ isCut }) => isCut), outsides: long.filter(({ isCut }) => !isCut) };
}

export const lengthOf = (points: readonly Vec[]): number =>
  points.reduce((sum, p, i) => (i === 0 ? 0 : sum + distance(points[i - 1] as Vec, p)), 0);

interface SortedRun extends Run {
  readonly isCut: boolean;
}

const runsOf = (polygon: Polygon, present: OutlineTree): SortedRun[] =>
  partedRound(polygon, (a, b) => !liesOn(present, a, b)).map(({ holds, ...run }) => ({ ...run, isCut: holds }));

/** A polygon parted all the way round, from a place where its pieces begin or cease to pass a test. */
export function partedRound(
  polygon: Polygon,
  test: (a: Vec, b: Vec) => boolean,
): (Run & { readonly holds: boolean })[] {
  const kinds = polygon.map((a, i) => test(a, polygon[(i + 1) % polygon.length] as Vec));
  const change = kinds.findIndex((kind, i) => kind !== kinds.at(i - 1));
  const start = Math.max(0, change);
  const round = [...polygon.slice(start), ...polygon.slice(0, start), polygon[start] as Vec];
  return parted(round, test).map((part) => ({ ...part, closed: change < 0 }));
}

/** A line parted where its pieces begin or cease to pass a test. */
export function parted(
  points: readonly Vec[],
  test: (a: Vec, b: Vec) => boolean,
): { readonly points: readonly Vec[]; readonly holds: boolean }[] {
  const parts: { points: Vec[]; holds: boolean }[] = [];
  points.slice(1).forEach((b, i) => {
    const a = points[i] as Vec;
    const holds = test(a, b);
    const last = parts.at(-1);
    if (last?.holds === holds) last.points.push(b);
    else parts.push({ points: [a, b], holds });
  });
  return parts;
}

const liesOn = (present: OutlineTree, a: Vec, b: Vec): boolean =>
  [0.25, 0.5, 0.75].every((t) => nearestOnOutline(present, lerp(a, b, t)).distanceMm <= onOutlineMm);
