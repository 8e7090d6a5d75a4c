import { buildOutlineTree, type OutlineTree } from '../motion/outline-tree.ts';
import type { Vec } from '../plane/vec.ts';
import { offset } from '../polygons/offset.ts';
import { intersection, union } from '../polygons/polygon-engine.ts';
import { areaMm2, loopsOf, outlinesOf, type Polygon, type Polygons, signedAreaMm2 } from '../polygons/polygons.ts';
import { metalLeft } from './metal-left.ts';
import { type PointBlocks, pointBlocks } from './point-blocks.ts';
import { straightPath } from './straight-path.ts';
import { cutRuns } from './straight-run.ts';
import { arcToleranceMm, hairMm, joinMm, sharedMm2 } from './tolerances.ts';

/** Why a stretch of the cut's edge is left as it was. */
export type WhyAsItWas = 'opening' | 'no-room' | 'do-not-cut';

/** A stretch of the edge that no straight one was found for. */
export interface AsItWas {
  readonly at: Vec;
  readonly why: WhyAsItWas;
}

/** A cut with an edge that a grinder can follow; holds the cut it was made from. */
export interface StraightCut {
  readonly cut: Polygons;
  readonly asItWas: readonly AsItWas[];
}

/** How far a straight edge lies beyond lines that touch and arcs that are true, mm. */
export const straightBoundMm = hairMm + arcToleranceMm + 2 * joinMm;

/** Two stretches whose straight edges cross are made one, and that again made straight, so many times. */
const mostRounds = 4;

/**
 * A cut grown outward until its edge is made of flats of `leastFlatMm` or more and of arcs of `radiusMm` or more in the
 * corners that are internal ones of the metal left; a flat is shorter only where the casting's own outline ends it.
 * Every corner of the cut must have room for a disc of `radiusMm`. No metal that stays (`keep`) is bitten by what is
 * added. A cut wholly within the metal is left as it is: an opening is followed from the inside.
 */
export function straightened(metal: Polygons, cut: Polygons, keep: readonly Polygons[], radiusMm: number): StraightCut {
  const outline = buildOutlineTree(loopsOf(metal));
  let straight: StraightCut = { cut, asItWas: [] };
  for (let round = 0; round < mostRounds; round++) {
    const { added, asItWas } = addedTo(metal, straight.cut, outline, keep, radiusMm);
    const { polygons } = offset(outlinesOf(union(added)), joinMm, joinMm, 'outside');
    straight = { cut: union([...straight.cut, ...intersection(metal, polygons)]), asItWas };
    if (areaMm2(added) - areaMm2(union(added)) < sharedMm2) break;
  }
  return straight;
}

function addedTo(
  metal: Polygons,
  cut: Polygons,
  outline: OutlineTree,
  keep: readonly Polygons[],
  radiusMm: number,
): { added: Polygon[]; asItWas: AsItWas[] } {
  const left = metalLeft(metal, cut);
  const added: Polygon[] = [];
  const asItWas: AsItWas[] = [];
  const stays = new Set([...left.filter((polygon) => signedAreaMm2(polygon) > 0), ...keep.flat()]);
  const blocks = new Map([...left, ...keep.flat()].map((polygon) => [polygon, pointBlocks(polygon, true)]));
  for (const polygon of left) {
    const others = [...blocks].flatMap(([other, points]) => (other !== polygon && stays.has(other) ? [points] : []));
    const outlines = { own: blocks.get(polygon) as PointBlocks, others };
    for (const run of cutRuns(polygon, outline)) {
      const at = run.ring[run.end >> 1] as Vec;
      const straight = run.isClosed ? null : straightPath(run, outlines, radiusMm);
      if (straight === null) asItWas.push({ at, why: run.isClosed ? 'opening' : 'no-room' });
      else if (keep.some((kept) => areaMm2(intersection([straight], kept)) > sharedMm2)) {
        asItWas.push({ at, why: 'do-not-cut' });
      } else added.push(straight);
    }
  }
  return { added, asItWas };
}
