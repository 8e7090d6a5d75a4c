import { treeOf } from '../clearance/trees.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import type { Region } from '../geometry/plane/loop.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf, type Polygons } from '../geometry/polygons/polygons.ts';
import { numberOf, remembered } from '../geometry/remembered.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import { metalOf } from '../plan/bands/metal.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';

/** A range of depth in which the same of a casting stands throughout; null where nothing of it has a depth. */
export interface Slab {
  readonly depth: DepthRange | null;
  readonly sections: readonly Section[];
  /** Whether the casting is traced only in part here. */
  readonly isBounded: boolean;
}

/** The slabs of a casting over a range of depth, or over all it has; in order of depth. */
export function slabsOf(casting: Casting, within: DepthRange | null): Slab[] {
  const { sections, hollows, traced } = casting;
  const depths = [...sections, ...hollows, ...(traced === null ? [] : [traced])].flatMap(({ depth }) => depth ?? []);
  const ends = depths.flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  if (within === null && ends.length === 0) return [slabAt(casting, null)];
  const [least, most] = within === null ? [Math.min(...ends), Math.max(...ends)] : [within.fromMm, within.toMm];
  const breaks = [...new Set([least, ...ends.filter((mm) => mm > least && mm < most), most])].sort((a, b) => a - b);
  return breaks.slice(1).map((toMm, i) => slabAt(casting, { fromMm: breaks[i] as number, toMm }));
}

function slabAt({ sections, traced }: Casting, depth: DepthRange | null): Slab {
  const stands = (range: DepthRange | null): boolean =>
    range === null || (depth !== null && range.fromMm <= depth.fromMm && depth.toMm <= range.toMm);
  return {
    depth,
    sections: sections.filter((section) => stands(section.depth) && section.loops.length > 0),
    isBounded: traced !== null && stands(traced.depth),
  };
}

/** How deep a point lies within some outlines, mm; less than 0 outside them, by as much; and the outline's nearest point. */
export interface Within {
  readonly insideMm: number;
  readonly at: Vec;
}

export function within(tree: OutlineTree, p: Vec): Within {
  const { distanceMm, point } = nearestOnOutline(tree, p);
  return { insideMm: regionContains(tree, p.x, p.y) ? distanceMm : -distanceMm, at: point };
}

/** Whether a disc reaches into the metal of a slab. */
export const reachesInto = (slab: Slab, at: Vec, radiusMm: number): boolean =>
  slab.sections.length > 0 && within(treeOfSlab(slab), at).insideMm > -radiusMm;

const together = remembered<Polygons>(8);

/** The metal of a slab: one section's outlines as they are, of several together what lies in any, never too much. */
export function treeOfSlab({ sections }: Slab): OutlineTree {
  const [only, ...others] = sections;
  return only !== undefined && others.length === 0
    ? treeOf(only.loops)
    : treeOf(outlinesTogether(metalOfSlab(sections)));
}

/** The same as polygons, worked out once however many holes stand there. */
export function metalOfSlab(sections: readonly Section[]): Polygons {
  const [first] = sections;
  if (first === undefined) return [];
  const key = sections.map(({ loops }) => numberOf(loops)).join();
  return together(first.loops, key, () =>
    union(sections.flatMap(({ loops }) => metalOf(loops, toleranceMm, 'inside'))),
  );
}

const outlines = remembered<Region>(1);
const outlinesTogether = (metal: Polygons): Region => outlines(metal, '', () => loopsOf(metal));
