import { circleLoop, type Loop, type Region } from '../geometry/loop.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { radiusRange } from '../geometry/motion/polar-frame.ts';
import { type Vec, vec } from '../geometry/vec.ts';

const axis = vec(0, 0);

/** A ring about the axis, mm; `fromMm` 0 is a disc. */
interface Ring {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * What a solid covers when it runs round the axis: the exact rings of radii at which it has metal, as circles.
 *
 * Each outline that bounds metal from outside holds, with the holes directly in it, one connected piece; the radii of
 * a connected piece are an unbroken range, from 0 where the axis runs through it.
 */
export function sweptRound(solid: Region): Region {
  const outlines = solid.map((loop) => ({ loop, tree: buildOutlineTree([loop]) }));
  const rings = outlines
    .filter((outline) => holdersOf(outline, outlines).length % 2 === 0)
    .map((outer) => ringOf(outer, outlines));
  return mergeRings(rings).flatMap(({ fromMm, toMm }) =>
    fromMm > 0 ? [circleLoop(axis, toMm), circleLoop(axis, fromMm)] : [circleLoop(axis, toMm)],
  );
}

interface Outline {
  readonly loop: Loop;
  readonly tree: OutlineTree;
}

function ringOf(outer: Outline, outlines: readonly Outline[]): Ring {
  const inside = outlines.filter((other) => other !== outer && contains(outer, pointOf(other.loop)));
  const [fromMm, toMm] = radiusRange(outer.tree, axis);
  const axisInMetal = contains(outer, axis) && !inside.some((other) => contains(other, axis));
  if (axisInMetal) return { fromMm: 0, toMm };
  const depth = holdersOf(outer, outlines).length + 1;
  const holes = inside.filter((hole) => holdersOf(hole, outlines).length === depth);
  return { fromMm: Math.min(fromMm, ...holes.map((hole) => radiusRange(hole.tree, axis)[0])), toMm };
}

const holdersOf = (inner: Outline, outlines: readonly Outline[]): Outline[] =>
  outlines.filter((other) => other !== inner && contains(other, pointOf(inner.loop)));

const contains = ({ tree }: Outline, p: Vec): boolean => regionContains(tree, p.x, p.y);

const pointOf = (loop: Loop): Vec =>
  loop.kind === 'circle' ? vec(loop.centre.x + loop.radius, loop.centre.y) : (loop.vertices[0] as Vec);

function mergeRings(rings: readonly Ring[]): Ring[] {
  const merged: { fromMm: number; toMm: number }[] = [];
  for (const ring of [...rings].sort((a, b) => a.fromMm - b.fromMm)) {
    const last = merged.at(-1);
    if (last && ring.fromMm <= last.toMm) last.toMm = Math.max(last.toMm, ring.toMm);
    else merged.push({ ...ring });
  }
  return merged;
}
