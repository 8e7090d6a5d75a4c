import { deepestOnCut } from '../clearance/deepest.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { outlinePoints } from '../geometry/motion/outline-points.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { DepthRange, Section } from '../job/casting.ts';

/** How far the outlines of two castings lie apart, wherever both have metal at a depth; both ways, mm. */
export interface Agreement {
  /** 95 in 100 of all places along the outlines are no farther off. */
  readonly mostMm: number;
  readonly largestMm: number;
  readonly at: Vec;
  readonly depth: DepthRange | null;
}

/** Places along an outline are so far apart, mm: finer than castings change. */
const apartMm = 0.5;
const share = 0.95;
const arcsMm = 1e-3;

interface Outlined {
  readonly polygons: Polygons;
  readonly tree: OutlineTree;
}

/**
 * How well two castings agree; null where they have metal at no common depth. The largest distance is that of the
 * outlines whole, the other a count of places along them.
 */
export function agreementOf(first: readonly Section[], second: readonly Section[]): Agreement | null {
  const offMm: number[] = [];
  let largest: Agreement | null = null;
  for (const { depth, pair } of told(commonDepths(first, second))) {
    const [a, b] = [outlined(pair[0]), outlined(pair[1])];
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const farthest = deepestOnCut(from.polygons, to.tree);
      if (largest === null || farthest.mm > largest.largestMm)
        largest = { mostMm: 0, largestMm: farthest.mm, at: farthest.at, depth };
      for (const { point } of outlinePoints(from.tree, apartMm))
        offMm.push(nearestOnOutline(to.tree, point).distanceMm);
    }
  }
  return largest && { ...largest, mostMm: quantile(offMm) };
}

/** All that stands of both over one range of depth. */
interface CommonDepth {
  readonly depth: DepthRange | null;
  readonly pair: readonly [readonly Section[], readonly Section[]];
}

function commonDepths(first: readonly Section[], second: readonly Section[]): CommonDepth[] {
  const depths = [...first, ...second].map(({ depth }) => depth).filter((depth) => depth !== null);
  const ends = [...new Set(depths.flatMap(({ fromMm, toMm }) => [fromMm, toMm]))].sort((a, b) => a - b);
  if (ends.length === 0) return [{ depth: null, pair: [first, second] }];
  return ends.slice(1).map((toMm, i): CommonDepth => {
    const depth = { fromMm: ends[i] as number, toMm };
    return { depth, pair: [standingAt(first, depth), standingAt(second, depth)] };
  });
}

const standingAt = (sections: readonly Section[], { fromMm, toMm }: DepthRange): Section[] =>
  sections.filter(({ depth }) => depth === null || (depth.fromMm <= fromMm && depth.toMm >= toMm));

/** Where both have metal, the same outlines once; what only the errors of depth bring together is left out. */
function told(all: readonly CommonDepth[]): CommonDepth[] {
  const both = all.filter(({ pair: [a, b] }) => a.length > 0 && b.length > 0);
  const thick = both.filter(({ depth, pair: [a, b] }) => {
    const errorMm = Math.max(...a.map(depthError)) + Math.max(...b.map(depthError));
    return depth === null || depth.toMm - depth.fromMm > errorMm;
  });
  const counting = thick.length > 0 ? thick : both;
  return counting.filter(({ pair }, i) => counting.findIndex((other) => isSame(other.pair, pair)) === i);
}

const depthError = ({ depthErrorMm }: Section): number => depthErrorMm;

const isSame = ([a, b]: CommonDepth['pair'], [c, d]: CommonDepth['pair']): boolean =>
  sameSections(a, c) && sameSections(b, d);

const sameSections = (a: readonly Section[], b: readonly Section[]): boolean =>
  a.length === b.length && a.every((section, i) => section === b[i]);

function outlined(sections: readonly Section[]): Outlined {
  const polygons = union(sections.flatMap(({ loops }) => polygonise(loops, arcsMm, 'inside')));
  return { polygons, tree: buildOutlineTree(loopsOf(polygons)) };
}

const quantile = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.ceil(share * values.length) - 1)] ?? 0;
