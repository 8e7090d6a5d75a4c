import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, endX, endY, type OutlineTree, startX, startY } from '../geometry/motion/outline-tree.ts';
import { boxAround } from '../geometry/plane/edge-box.ts';
import { squaredToSegment } from '../geometry/plane/segment.ts';
import { distance, lerp, type Vec, vec } from '../geometry/plane/vec.ts';
import { loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import { deepestWithinMm } from './tolerances.ts';

/** How deep something goes at its deepest, mm, and a point where it does. */
export interface Depth {
  readonly mm: number;
  readonly at: Vec;
}

/**
 * How deep a removed region goes, where `left` is the metal that stays and `outline` that there was, both trees of
 * straight edges: the larger of the greatest distance from a point of it to the metal left, and of the
 * greatest distance from the cut surface to the nearest point of the outline as it was. Null where no metal is left.
 */
export function deepest(removed: Polygons, left: OutlineTree, outline: OutlineTree): Depth | null {
  return left.edgeCount === 0 ? null : farthestFromMetal(removed, left, deepestOnCut(removed, outline));
}

const none: Depth = { mm: 0, at: vec(0, 0) };

/**
 * A search for the greatest distance to an outline, by branch and bound: no point of a cell is farther from a straight
 * edge than the farthest of the cell's extreme points, so the edge nearest to one of its points bounds it well.
 */
interface Search {
  readonly outline: OutlineTree;
  best: Depth;
  /** The edge nearest to what was measured last. */
  nearest: number;
}

/** Measures at a point, keeps it if it is the deepest so far, and gives how far the nearest edge is and which. */
function probe(search: Search, at: Vec): { readonly distanceMm: number; readonly edge: number } {
  const { distanceMm, edge } = nearest(search, at);
  if (distanceMm > search.best.mm) search.best = { mm: distanceMm, at };
  return { distanceMm, edge };
}

function nearest(search: Search, at: Vec): { readonly distanceMm: number; readonly edge: number } {
  const found = nearestOnOutline(search.outline, at, search.nearest);
  search.nearest = found.edge;
  return found;
}

/** How far a point lies from a straight edge of a tree, mm. */
const fromEdgeMm = (tree: OutlineTree, edge: number, p: Vec): number =>
  Math.sqrt(squaredToSegment(p.x, p.y, startX(tree, edge), startY(tree, edge), endX(tree, edge), endY(tree, edge)));

const beats = (search: Search, mm: number): boolean => mm > search.best.mm + deepestWithinMm;

/** So much, mm, is what rounding adds to a sum of distances that are told apart to the last bit. */
const roundingMm = 1e-9;

/**
 * Probes the corners of a region that could be deeper than the best. No point is farther from an outline than another
 * is and the way between them, so that along an outline most need not be measured. Gives, for each corner in order,
 * what it is no farther than, mm.
 */
function probeCorners(search: Search, removed: Polygons): Float64Array {
  const limitsMm = new Float64Array(removed.reduce((sum, polygon) => sum + polygon.length, 0));
  let i = 0;
  for (const polygon of removed) {
    let before: Vec | undefined;
    let limitMm = Number.POSITIVE_INFINITY;
    for (const p of polygon) {
      if (before !== undefined) limitMm += distance(before, p) + roundingMm;
      if (limitMm >= search.best.mm) limitMm = probe(search, p).distanceMm;
      limitsMm[i++] = limitMm;
      before = p;
    }
  }
  return limitsMm;
}

/** Part of an edge, and what its ends are no farther than, mm. */
interface EdgeCell {
  readonly p: Vec;
  readonly q: Vec;
  readonly limitP: number;
  readonly limitQ: number;
}

/** What no point of an edge is farther than: of two ways to it from its ends the worse is the longer by half. */
const limitOf = ({ p, q, limitP, limitQ }: EdgeCell): number => (limitP + limitQ + distance(p, q)) / 2 + roundingMm;

function edgeCells(removed: Polygons, limitsMm: Float64Array): EdgeCell[] {
  let start = 0;
  return removed.flatMap((polygon) => {
    const first = start;
    start += polygon.length;
    return polygon.map((p, i): EdgeCell => {
      const next = (i + 1) % polygon.length;
      const [limitP, limitQ] = [limitsMm[first + i] as number, limitsMm[first + next] as number];
      return { p, q: polygon[next] as Vec, limitP, limitQ };
    });
  });
}

/** The greatest distance from the edges of a region to an outline, a tree of straight edges: edges along it count for nothing. */
export function deepestOnCut(removed: Polygons, outline: OutlineTree): Depth {
  const search: Search = { outline, best: none, nearest: -1 };
  const cells = edgeCells(removed, probeCorners(search, removed));
  for (let cell = cells.pop(); cell !== undefined; cell = cells.pop()) {
    if (limitOf(cell) <= search.best.mm) continue;
    const { p, q, limitP, limitQ } = cell;
    const middle = lerp(p, q, 0.5);
    const { edge: near, distanceMm } = probe(search, middle);
    const reachMm = Math.max(fromEdgeMm(outline, near, p), fromEdgeMm(outline, near, q));
    if (!beats(search, reachMm)) continue;
    cells.push({ p, q: middle, limitP, limitQ: distanceMm }, { p: middle, q, limitP: distanceMm, limitQ });
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
  const search: Search = { outline: left, best: known, nearest: -1 };
  const inside = buildOutlineTree(loopsOf(removed));
  probeCorners(search, removed);
  const cells = [cellRound(removed)];
  for (let cell = cells.pop(); cell !== undefined; cell = cells.pop()) {
    const { edge: near, distanceMm } = nearest(search, cell.centre);
    if (distanceMm + Math.SQRT2 * cell.halfMm + roundingMm <= search.best.mm) continue;
    const far = beyondBest(search, near, cell, inside);
    if (far.length === 0) continue;
    const farthest = far.reduce((a, b) => (fromEdgeMm(left, near, a) >= fromEdgeMm(left, near, b) ? a : b));
    if (beyondBest(search, probe(search, farthest).edge, cell, inside).length > 0) cells.push(...quartersOf(cell));
  }
  return search.best;
}

/**
 * Of the points whose convex hull holds all of the removed region that lies in the cell, those farther from an edge
 * than the best; its corners count where they lie in the region, which is asked last because it costs most.
 */
function beyondBest(search: Search, edge: number, cell: Cell, inside: OutlineTree): readonly Vec[] {
  const isBeyond = (p: Vec): boolean => beats(search, fromEdgeMm(search.outline, edge, p));
  const far: Vec[] = [];
  for (const [a, b] of cell.edges) {
    if (isBeyond(a)) far.push(a);
    if (isBeyond(b)) far.push(b);
  }
  for (const p of cornersOf(cell)) if (isBeyond(p) && regionContains(inside, p.x, p.y)) far.push(p);
  return far;
}

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

const axes = ['x', 'y'] as const;

function quartersOf({ centre, halfMm, edges }: Cell): Cell[] {
  const half = halfMm / 2;
  return quadrants.map((q) => {
    const middle = vec(centre.x + q.x * half, centre.y + q.y * half);
    const within: (readonly [Vec, Vec])[] = [];
    for (const edge of edges) if (comesNear(edge, middle, half)) within.push(...clipped(edge, middle, half));
    return { centre: middle, halfMm: half, edges: within };
  });
}

/** Whether a segment is not all beyond one side of a square. */
const comesNear = ([a, b]: readonly [Vec, Vec], centre: Vec, halfMm: number): boolean =>
  Math.min(a.x, b.x) <= centre.x + halfMm &&
  Math.max(a.x, b.x) >= centre.x - halfMm &&
  Math.min(a.y, b.y) <= centre.y + halfMm &&
  Math.max(a.y, b.y) >= centre.y - halfMm;

/** What lies of a segment in a square, by Liang and Barsky; none where it misses. */
function clipped([a, b]: readonly [Vec, Vec], centre: Vec, halfMm: number): (readonly [Vec, Vec])[] {
  let [from, to] = [0, 1];
  for (const axis of axes) {
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
