import { apply, type Rigid, rigid } from '../../geometry/plane/rigid.ts';
import { type PointPair, rigidFit } from '../../geometry/plane/rigid-fit.ts';
import { cross, distance, dot, type Vec, vec } from '../../geometry/plane/vec.ts';
import { candidatesNear, type HoleGrid, hasNear } from './hole-grid.ts';
import type { MatchOptions } from './pattern.ts';

/** Which hole of one pattern comes upon which of the other, and how far off, mm. */
export interface IndexPair {
  readonly fixed: number;
  readonly moving: number;
  readonly offMm: number;
}

/** A position of the moving pattern, fitted by least squares to the holes that come together there. */
export interface Position {
  readonly motion: Rigid;
  readonly pairs: readonly IndexPair[];
  readonly rmsMm: number;
}

/** Pairing and fit are done over until the pairs stay, so many times at the most. */
const mostRounds = 6;

/** How many moving holes have a fixed one within reach, given up where that cannot be `least` any more. */
export function countNear(
  grid: HoleGrid,
  moving: readonly Vec[],
  motion: Rigid,
  { reachMm }: MatchOptions,
  least: number,
): number {
  const { cos, sin, shift } = motion;
  let count = 0;
  for (let i = 0; i < moving.length; i++) {
    if (count + moving.length - i < least) return count;
    const { x, y } = moving[i] as Vec;
    if (hasNear(grid, cos * x - sin * y + shift.x, sin * x + cos * y + shift.y, reachMm)) count += 1;
  }
  return count;
}

/** The best position near a trial; null where fewer than `fewest` holes come together. */
export function positionNear(
  grid: HoleGrid,
  moving: readonly Vec[],
  near: Rigid,
  options: MatchOptions,
  fewest: number,
): Position | null {
  let motion = near;
  let before = '';
  for (let round = 0; round < mostRounds; round++) {
    const pairs = nearestPairs(grid, moving, motion, options.reachMm);
    if (pairs.length < fewest) return null;
    const key = keyOf(pairs);
    if (key === before) break;
    before = key;
    motion = fitted(pairs, grid.points, moving, options);
  }
  const pairs = nearestPairs(grid, moving, motion, options.reachMm);
  const rmsMm = Math.sqrt(pairs.reduce((sum, { offMm }) => sum + offMm * offMm, 0) / pairs.length);
  return pairs.length < fewest ? null : { motion, pairs, rmsMm };
}

/** Names a pairing, whatever order its pairs are in. */
const keyOf = (pairs: readonly IndexPair[]): string =>
  pairs
    .map(({ fixed, moving }) => `${fixed}-${moving}`)
    .sort()
    .join(' ');

/** Pairs within reach, nearest first, each hole in one of them. */
function nearestPairs(grid: HoleGrid, moving: readonly Vec[], motion: Rigid, reachMm: number): IndexPair[] {
  const near: IndexPair[] = [];
  for (const [i, own] of moving.entries()) {
    const at = apply(motion, own);
    for (const fixed of candidatesNear(grid, at.x, at.y)) {
      const offMm = distance(grid.points[fixed] as Vec, at);
      if (offMm <= reachMm) near.push({ fixed, moving: i, offMm });
    }
  }
  near.sort((a, b) => a.offMm - b.offMm || a.fixed - b.fixed || a.moving - b.moving);
  const [takenFixed, takenMoving] = [new Set<number>(), new Set<number>()];
  return near.filter((pair) => {
    if (takenFixed.has(pair.fixed) || takenMoving.has(pair.moving)) return false;
    takenFixed.add(pair.fixed);
    takenMoving.add(pair.moving);
    return true;
  });
}

function fitted(
  pairs: readonly IndexPair[],
  fixed: readonly Vec[],
  moving: readonly Vec[],
  { centred }: MatchOptions,
): Rigid {
  const points = pairs.map((pair): PointPair => ({ from: moving[pair.moving] as Vec, to: fixed[pair.fixed] as Vec }));
  return centred ? turnFit(points) : rigidFit(points).motion;
}

/** The turn about the origin that is best by least squares: atan2(Σ from × to, Σ from · to). */
function turnFit(points: readonly PointPair[]): Rigid {
  const crossSum = points.reduce((sum, { from, to }) => sum + cross(from, to), 0);
  const dotSum = points.reduce((sum, { from, to }) => sum + dot(from, to), 0);
  return rigid(Math.atan2(crossSum, dotSum), vec(0, 0));
}

/** Whether two positions lay the moving pattern on one place, to within the reach. */
export function isSamePosition(a: Rigid, b: Rigid, moving: readonly Vec[], { reachMm }: MatchOptions): boolean {
  return moving.every((at) => distance(apply(a, at), apply(b, at)) <= reachMm);
}

/** A fit is as good that misses by no more than half as much again, and this; mm. */
const asGoodRatio = 1.5;
const asGoodMm = 0.05;
/** As many holes, and as closely. */
export const isAsGood = (a: Position, best: Position): boolean =>
  a.pairs.length === best.pairs.length && a.rmsMm <= asGoodRatio * best.rmsMm + asGoodMm;
