import type { Region } from '../geometry/loop.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import { polygonise } from '../geometry/polygonise.ts';
import type { Polygon } from '../geometry/polygons.ts';
import { distance, lerp, type Vec } from '../geometry/vec.ts';
import { toleranceMm } from './cut-band.ts';

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

/** Edges of one kind that follow one another, from a place where the kind changes. */
function runsOf(polygon: Polygon, present: OutlineTree): SortedRun[] {
  const { length: count } = polygon;
  const at = (i: number): Vec => polygon[i % count] as Vec;
  const isCut = polygon.map((a, i) => !liesOn(present, a, at(i + 1)));
  const first = isCut.findIndex((cut, i) => cut !== isCut[(i + count - 1) % count]);
  if (first < 0) return [{ points: [...polygon, at(0)], closed: true, isCut: isCut[0] ?? false }];
  const runs: { points: Vec[]; closed: boolean; isCut: boolean }[] = [];
  for (let step = 0; step < count; step++) {
    const i = (first + step) % count;
    const kind = isCut[i] as boolean;
    const run = runs.at(-1);
    if (run?.isCut === kind) run.points.push(at(i + 1));
    else runs.push({ points: [at(i), at(i + 1)], closed: false, isCut: kind });
  }
  return runs;
}

const liesOn = (present: OutlineTree, a: Vec, b: Vec): boolean =>
  [0.25, 0.5, 0.75].every((t) => nearestOnOutline(present, lerp(a, b, t)).distanceMm <= onOutlineMm);
