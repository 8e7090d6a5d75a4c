import { leastDistance } from '../../src/geometry/motion/least-distance.ts';
import { still } from '../../src/geometry/motion/motion.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import type { Region } from '../../src/geometry/plane/loop.ts';
import { identity } from '../../src/geometry/plane/rigid.ts';
import { difference, pieces } from '../../src/geometry/polygons/polygon-engine.ts';
import { areaMm2, loopsOf, type Polygons } from '../../src/geometry/polygons/polygons.ts';
import type { Casting, DepthRange, Section } from '../../src/job/casting.ts';
import { depthsParted, gapMm, sharesDepth } from '../../src/plan/bands/depth-ranges.ts';
import { metalOf } from '../../src/plan/bands/metal.ts';
import type { PlanResult } from '../../src/plan/plan-result.ts';

/** Arcs within this, mm; these outlines have none. */
const toleranceMm = 1e-3;

/** A sliver that the polygon engine leaves is no chip, mm². */
const chipMm2 = 0.05;

interface MetalLayer {
  readonly section: Section;
  readonly depth: DepthRange;
  readonly metal: Polygons;
  /** The same as loops: they stay the very same ones for as long as the metal does, so that what is known of them does. */
  readonly loops: Region;
}

/** The casting on the bench, true, as it has been ground so far; its layers in order of depth, section by section. */
export interface Workpiece {
  readonly casting: Casting;
  readonly layers: readonly MetalLayer[];
}

/** Room where all metal of a section goes, over a range of depth. */
export interface Removal {
  readonly section: string;
  readonly depth: DepthRange;
  readonly room: Polygons;
}

/** What a plan takes off, to one of its lines, in its own frame. */
export const laidOut = ({ cuts }: Pick<PlanResult, 'cuts'>, line: 'first' | 'planned' | 'last'): Removal[] =>
  cuts.flatMap(({ sections }) =>
    sections.flatMap(({ id, bands }) =>
      bands.flatMap((band): Removal[] => {
        const depth = line === 'last' ? band.lastDepth : band.depth;
        return depth === null ? [] : [{ section: id, depth, room: band[line] }];
      }),
    ),
  );

export const workpieceOf = (casting: Casting): Workpiece => ({
  casting,
  layers: casting.sections.map((section) => {
    if (section.depth === null) throw new Error(`${section.id} has no depth`);
    const metal = metalOf(section.loops, toleranceMm, 'outside');
    return { section, depth: section.depth, metal, loops: section.loops };
  }),
});

/** The casting as it now is. */
export const castingNow = ({ casting, layers }: Workpiece): Casting => ({
  ...casting,
  sections: layers
    .filter(({ loops }) => loops.length > 0)
    .map(({ section, depth, loops }) => ({ ...section, depth, loops, ...(section.depth && { whole: section.depth }) })),
});

/** The workpiece with some of it ground away. */
export const ground = (piece: Workpiece, removals: readonly Removal[]): Workpiece => ({
  ...piece,
  layers: removals.reduce<readonly MetalLayer[]>(
    (layers, removal) => layers.flatMap((layer) => layersAfter(layer, removal)),
    piece.layers,
  ),
});

function layersAfter(layer: MetalLayer, { section, depth, room }: Removal): MetalLayer[] {
  if (layer.section.id !== section || !sharesDepth(layer.depth, depth)) return [layer];
  const metal = difference(layer.metal, room);
  if (areaMm2(layer.metal) - areaMm2(metal) < chipMm2) return [layer];
  return depthsParted(layer.depth, [{ depth }]).flatMap((range) => {
    if (range === null) return [];
    const isGround = sharesDepth(range, depth);
    return [{ ...layer, depth: range, ...(isGround && { metal, loops: loopsOf(metal) }) }];
  });
}

export const volumeMm3 = ({ layers }: Workpiece): number =>
  layers.reduce((sum, { depth, metal }) => sum + areaMm2(metal) * (depth.toMm - depth.fromMm), 0);

/** The least wall left between what has been ground away and any hollow, mm; null where nothing was ground. */
export function leastWallMm(piece: Workpiece): number | null {
  const walls = piece.layers.flatMap(({ section, depth, metal }) => {
    const chips = pieces(difference(metalOf(section.loops, toleranceMm, 'outside'), metal)).filter(
      (chip) => areaMm2(chip) > chipMm2,
    );
    if (chips.length === 0) return [];
    const removed = buildOutlineTree(loopsOf(chips.flat()));
    return piece.casting.hollows.map((hollow) => {
      const { distanceMm } = leastDistance(removed, buildOutlineTree(hollow.loops), identity, still);
      return Math.hypot(distanceMm, gapMm(depth, hollow.depth));
    });
  });
  return walls.length === 0 ? null : Math.min(...walls);
}
