import { treeOf } from '../../clearance/trees.ts';
import { metalLeft } from '../../geometry/cutting/metal-left.ts';
import { thinnest } from '../../geometry/cutting/thickness.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { difference, union } from '../../geometry/polygons/polygon-engine.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import { sharesDepth } from '../bands/depth-ranges.ts';
import type { SectionCut } from '../bands/layers.ts';
import { metalOf } from '../bands/metal.ts';
import type { Guard } from './guards.ts';
import { handErrorOf } from './walls.ts';

/** Where a cut leaves a part's own metal thin, mm. */
export interface ThinPlace {
  readonly section: string;
  /** Of the band that is cut. */
  readonly depth: DepthRange | null;
  /** From the last line to the outline across the metal, the section's trace error and the hand's taken off. */
  readonly wallMm: number;
  readonly nominalMm: number;
  readonly keepMm: number;
  /** Through what it is measured: across the section in the plane, or along the crank, from the end of a cut. */
  readonly along: 'plane' | 'crank';
  readonly at: Vec;
  readonly across: Vec;
  readonly holds: boolean;
}

/** Arcs of the outline keep within this, on the side of less metal. */
const arcToleranceMm = 1e-3;

/** A wall thicker than this, twice the least and some more, is thick enough not to be spoken of, mm. */
export const spokenOfMm = (keepMm: number): number => 2 * keepMm + 5;

/** A wall is kept to a micrometre. */
export const thinPlace = (place: Omit<ThinPlace, 'holds'>): ThinPlace => ({
  ...place,
  holds: place.wallMm >= place.keepMm - 1e-3,
});

/** A wall told at worst as so much thicker than planned is another one, mm: the planned one is cut through. */
const otherWallMm = 0.01;

/** The thinnest at worst; nothing is left of a wall that is there as planned, and then is not. */
export const orGone = <Wall extends { readonly mm: number }>(
  planned: Wall | null,
  atWorst: Wall | null,
): Wall | null =>
  planned !== null && (atWorst === null || atWorst.mm > planned.mm + otherWallMm) ? { ...planned, mm: 0 } : atWorst;

/**
 * Where a cut leaves the part thinner than the fit's least wall, or nearest to it: in each section and band the least
 * distance through metal from a new edge to the outline as it was, a hole, or another new edge across from it. None where no least wall is set. Yields wherever it may have taken long.
 */
export function* thinPlaces(
  cuts: readonly SectionCut[],
  guards: readonly Guard[],
  fit: Fit,
): Generator<void, ThinPlace[]> {
  const keepMm = fit.minWallMm;
  if (keepMm === null) return [];
  const thin: ThinPlace[] = [];
  for (const { section, bands } of cuts) {
    const solid = metalOf(section.loops, arcToleranceMm, 'inside');
    for (const { depth, last, left: leftAsPlanned } of bands) {
      yield;
      // the room of a hole is no metal, and its edge as much an outside as any other
      const holes = guards.filter((guard) => guard.kind === 'hole' && sharesDepth(guard.depth, depth));
      const room = union(holes.flatMap(({ loops }) => metalOf(loops, arcToleranceMm, 'outside')));
      const open = (metal: Polygons): Polygons => (room.length === 0 ? metal : difference(metal, room));
      const [metal, left] = [open(solid), open(leftAsPlanned)];
      const outline =
        holes.length === 0 ? treeOf(section.loops) : buildOutlineTree([...section.loops, ...loopsOf(room)]);
      const reachMm = spokenOfMm(keepMm);
      const planned = thinnest(left, outline, reachMm);
      yield;
      const leftAtWorst = metalLeft(metal, last);
      yield;
      const atWorst = orGone(planned, thinnest(leftAtWorst, outline, reachMm));
      if (atWorst === null) continue;
      // where the planned cut leaves nothing thin, there is no less of it than at worst
      const nominalMm = planned?.mm ?? thinnest(left, outline, reachMm + atWorst.mm)?.mm ?? atWorst.mm;
      const wallMm = atWorst.mm - section.traceErrorMm - handErrorOf(fit);
      const { at, across } = atWorst;
      thin.push(thinPlace({ section: section.id, depth, wallMm, nominalMm, keepMm, along: 'plane', at, across }));
    }
  }
  return thin;
}
