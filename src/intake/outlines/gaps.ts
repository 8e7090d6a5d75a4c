import { add, cross, distance, lerp, scale, sub, type Vec } from '../../geometry/plane/vec.ts';
import type { ChainEnds } from './chain-ends.ts';
import { PointGrid } from './point-grid.ts';
import { sameEndMm } from './tolerances.ts';

/** Two ends that do not meet: a loose end and the nearest other. */
export interface Gap {
  readonly from: Vec;
  readonly to: Vec;
  readonly sizeMm: number;
  readonly layer: string;
  /** Left although narrow enough to join: some other end lies nearly as near, or the line is hardly longer. */
  readonly doubtful: boolean;
}

/** How many gaps are given their nearest end; a search of all ends each. */
const mostSearched = 40;

/** A chain is not closed over a gap wider than this share of its own length: it would enclose next to nothing. */
const widestShare = 1 / 3;

/**
 * Links ends up to `joinMm` apart, the narrowest gaps first so that wide ones never make them doubtful: two ends are
 * joined only while no other free end lies within twice the gap of either. Returns the gaps closed.
 */
export function joinGaps(ends: ChainEnds, joinMm: number): Gap[] {
  const joined: Gap[] = [];
  let reachMm = sameEndMm;
  while (reachMm < joinMm) {
    reachMm = Math.min(reachMm * 4, joinMm);
    for (const [one, other] of surePairs(ends, reachMm)) {
      joined.push(gapBetween(ends, one, other, 0));
      ends.link(one, other, meetingPoint(ends, one, other));
    }
  }
  return joined;
}

/** Pairs of free ends within reach of each other, where each is the only end within twice the reach of the other. */
function surePairs(ends: ChainEnds, reachMm: number): [number, number][] {
  const free = ends.free();
  const grid = new PointGrid(ends.points, 2 * reachMm);
  for (const end of free) grid.add(end);
  const nearest = new Map(free.map((end) => [end, onlyOther(ends, grid, end, reachMm)]));
  const pairs: [number, number][] = [];
  for (const [end, other] of nearest) {
    if (other !== null && end < other && nearest.get(other) === end) pairs.push([end, other]);
  }
  return pairs;
}

function onlyOther(ends: ChainEnds, grid: PointGrid, end: number, reachMm: number): number | null {
  // itself, its own chain's other end, and two more are enough to know
  const others = grid.near(ends.point(end), 2 * reachMm, 4).filter((other) => other !== end);
  const fit = others.filter((other) => other !== ends.farFrom(end) || !tooShort(ends, end));
  const [only] = fit;
  if (only === undefined || fit.length > 1) return null;
  return distance(ends.point(end), ends.point(only)) <= reachMm ? only : null;
}

const tooShort = (ends: ChainEnds, end: number): boolean =>
  distance(ends.point(end), ends.point(ends.farFrom(end))) > widestShare * ends.chainLength(end);

/** Straight ends meet where their lines cross, if that is near both; else halfway, so that each end moves least. */
function meetingPoint(ends: ChainEnds, one: number, other: number): Vec {
  const [p, q] = [ends.point(one), ends.point(other)];
  const nearMm = distance(p, q);
  const crossing = crossingOf(ends.straightInto(one), ends.straightInto(other));
  const near = crossing !== null && distance(crossing, p) <= nearMm && distance(crossing, q) <= nearMm;
  return near ? crossing : lerp(p, q, 0.5);
}

type Straight = readonly [from: Vec, to: Vec] | null;

function crossingOf(one: Straight, other: Straight): Vec | null {
  if (one === null || other === null) return null;
  const [along, across] = [sub(one[1], one[0]), sub(other[1], other[0])];
  const between = sub(other[0], one[0]);
  const turn = cross(along, across);
  const [share, otherShare] = [cross(between, across) / turn, cross(between, along) / turn];
  // lines that never cross, or cross behind where one of them starts
  return turn !== 0 && share > 0 && otherShare > 0 ? add(one[0], scale(along, share)) : null;
}

/** Every gap left, each end named once; `joinMm` tells the doubtful ones from the wide. */
export function openGaps(ends: ChainEnds, joinMm: number): Gap[] {
  const unlinked = ends.unlinked();
  const named = new Set<number>();
  const gaps: Gap[] = [];
  for (const end of ends.free()) {
    if (named.has(end)) continue;
    // past the number anyone reads, the chain's own other end will do
    const searching = gaps.length < mostSearched;
    const other = searching ? nearestOf(ends, unlinked, end) : ends.farFrom(end);
    if (!searching || nearestOf(ends, unlinked, other) === end) named.add(other);
    gaps.push(gapBetween(ends, end, other, joinMm));
  }
  return gaps;
}

function nearestOf(ends: ChainEnds, unlinked: readonly number[], end: number): number {
  const p = ends.point(end);
  let nearest = ends.farFrom(end);
  let least = squared(p, ends.point(nearest));
  for (const other of unlinked) {
    const apart = squared(p, ends.point(other));
    if (other !== end && apart < least) [nearest, least] = [other, apart];
  }
  return nearest;
}

const squared = (p: Vec, q: Vec): number => (p.x - q.x) ** 2 + (p.y - q.y) ** 2;

function gapBetween(ends: ChainEnds, end: number, other: number, joinMm: number): Gap {
  const [from, to] = [ends.point(end), ends.point(other)];
  const sizeMm = distance(from, to);
  return { from, to, sizeMm, layer: ends.layerOf(end), doubtful: sizeMm <= joinMm };
}
