import { boxAround } from '../geometry/edge-box.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { loopsOf, type Polygons } from '../geometry/polygons.ts';
import { distance, lerp, type Vec, vec } from '../geometry/vec.ts';

/** How deep something goes at its deepest, mm, and a point where it does. */
export interface Depth {
  readonly mm: number;
  readonly at: Vec;
}

/** The search ends when nothing deeper than this is left; the depth it gives is reached, and may be short by as much. */
const deepestWithinMm = 5e-5;

/**
 * How deep a removed region goes: the larger of the greatest distance from a point of it to the metal left, and of the
 * greatest distance from the cut surface to the nearest point of the outline as it was. Null where no metal is left.
 */
export function deepest(removed: Polygons, left: OutlineTree, outline: OutlineTree): Depth | null {
  return left.edgeCount === 0 ? null : farthestFromMetal(removed, left, deepestOnCut(removed, outline));
}

const none: Depth = { mm: 0, at: vec(0, 0) };

/**
 * A search for the greatest distance to an outline, by branch and bound: what is nearest to one point of a cell is no
 * farther from any other than from the cell's extreme points, a bound that closes in with the square of the cell's size.
 */
interface Search {
  readonly outline: OutlineTree;
  best: Depth;
}

/** Measures at a point, keeps it if it is the deepest so far, and gives what is nearest to it. */
function probe(search: Search, at: Vec): Vec {
  const { distanceMm, point } = nearestOnOutline(search.outline, at);
  if (distanceMm > search.best.mm) search.best = { mm: distanceMm, at };
  return point;
}

/** The farthest that points can be from what is nearest, given something near. */
const reach = (near: Vec, points: readonly Vec[]): number =>
  points.reduce((most, p) => Math.max(most, distance(near, p)), 0);

const beats = (search: Search, mm: number): boolean => mm > search.best.mm + deepestWithinMm;

/** The greatest distance from the edges of a removed region to the outline: edges along the outline count for nothing. */
function deepestOnCut(removed: Polygons, outline: OutlineTree): Depth {
  const search: Search = { outline, best: none };
  const cells = removed.flatMap((polygon) => polygon.map((p, i) => [p, polygon[(i + 1) % polygon.length] as Vec]));
  for (const [p] of cells) probe(search, p as Vec);
  for (let cell = cells.pop(); cell !== undefined; cell = cells.pop()) {
    const [p, q] = cell as [Vec, Vec];
    const middle = lerp(p, q, 0.5);
    const near = probe(search, middle);
    if (beats(search, reach(near, cell))) cells.push([p, middle], [middle, q]);
  }
  return search.best;
}

/** A square of the plane and what it holds of the outlines of the removed region. */
interface Cell {
  readonly centre: Vec;
  readonly halfMm: number;
  readonly edges: readonly (readonly [Vec, Vec])[];
}

/** The greatest distance from a point of a removed region to the metal left, or `known` where that is no less. */
function farthestFromMetal(removed: Polygons, left: OutlineTree, known: Depth): Depth {
  const search: Search = { outline: left, best: known };
  const inside = buildOutlineTree(loopsOf(removed));
  for (const p of removed.flat()) probe(search, p);
  const cells = [cellRound(removed)];
  for (let cell = cells.pop(); cell !== undefined; cell = cells.pop()) {
    const points = extremesOf(cell, inside);
    const { point: near } = nearestOnOutline(left, cell.centre);
    if (!beats(search, reach(near, points))) continue;
    const farthest = points.reduce((a, b) => (distance(near, a) >= distance(near, b) ? a : b));
    if (beats(search, reach(probe(search, farthest), points))) cells.push(...quartersOf(cell));
  }
  return search.best;
}

/** Points whose convex hull holds all of the removed region that lies in the cell. */
const extremesOf = (cell: Cell, inside: OutlineTree): readonly Vec[] => [
  ...cell.edges.flat(),
  ...cornersOf(cell).filter((p) => regionContains(inside, p.x, p.y)),
];

const quadrants = [vec(-1, -1), vec(1, -1), vec(1, 1), vec(-1, 1)] as const;

const cornersOf = ({ centre, halfMm }: Cell): Vec[] =>
  quadrants.map((q) => vec(centre.x + q.x * halfMm, centre.y + q.y * halfMm));

function cellRound(polygons: Polygons): Cell {
  const box = boxAround(polygons.flat().map((p) => ({ minX: p.x, minY: p.y, maxX: p.x, maxY: p.y })));
  return {
    centre: vec((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2),
    halfMm: Math.max(box.maxX - box.minX, box.maxY - box.minY) / 2,
    edges: polygons.flatMap((polygon) => polygon.map((p, i) => [p, polygon[(i + 1) % polygon.length] as Vec] as const)),
  };
}

function quartersOf({ centre, halfMm, edges }: Cell): Cell[] {
  const half = halfMm / 2;
  return quadrants.map((q) => {
    const middle = vec(centre.x + q.x * half, centre.y + q.y * half);
    return { centre: middle, halfMm: half, edges: edges.flatMap((edge) => clipped(edge, middle, half)) };
  });
}

/** What lies of a segment in a square, by Liang and Barsky; none where it misses. */
function clipped([a, b]: readonly [Vec, Vec], centre: Vec, halfMm: number): (readonly [Vec, Vec])[] {
  let [from, to] = [0, 1];
  for (const axis of ['x', 'y'] as const) {
    const start = a[axis] - centre[axis];
    const along = b[axis] - a[axis];
    if (along === 0) {
      if (Math.abs(start) > halfMm) return [];
      continue;
    }
    const [s, t] = [(-halfMm - start) / along, (halfMm - start) / along];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return from <= to ? [[from === 0 ? a : lerp(a, b, from), to === 1 ? b : lerp(a, b, to)]] : [];
}
