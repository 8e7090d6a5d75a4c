import type { Vec } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound, solidNear } from '../../geometry/polygons/solid-near.ts';
import type { Casting, DepthRange } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import type { BandCut } from '../bands/cut-band.ts';
import { type SectionCut, type SectionLayer, sectionLayers } from '../bands/layers.ts';
import { orGone, spokenOfMm, type ThinPlace, thinPlace } from './thin-places.ts';
import { handErrorOf } from './walls.ts';

/** Metal thinner than this in the plane is an edge and no floor, mm. */
const edgeMm = 0.1;

/**
 * What a cut leaves along the crank: from either end of a band, over what it takes there, to the next free depth of the
 * part, where that is no thicker than is spoken of. None where no least wall is set. Yields wherever it may have taken long.
 */
export function* thinFloors(casting: Casting, cuts: readonly SectionCut[], fit: Fit): Generator<void, ThinPlace[]> {
  const keepMm = fit.minWallMm;
  if (keepMm === null) return [];
  const layers = sectionLayers(casting, cuts);
  const handMm = handErrorOf(fit);
  const thin: ThinPlace[] = [];
  for (const { section, bands } of cuts) {
    for (const band of bands) {
      for (const way of [1, -1] as const) {
        yield;
        const reachMm = spokenOfMm(keepMm);
        const planned = floorOf(layers, band.planned, band.depth, way, reachMm);
        yield;
        const atWorst = orGone(planned, floorOf(layers, band.last, band.lastDepth, way, reachMm));
        if (atWorst === null) continue;
        const nominal = planned ?? floorOf(layers, band.planned, band.depth, way, reachMm + atWorst.mm) ?? atWorst;
        const wallMm = atWorst.mm - atWorst.errorMm - handMm;
        const told = { section: section.id, depth: band.depth, wallMm, nominalMm: nominal.mm, keepMm };
        thin.push(thinPlace({ ...told, along: 'crank', at: atWorst.at, across: atWorst.at }));
      }
    }
  }
  return thin;
}

interface Floor {
  readonly mm: number;
  readonly at: Vec;
  /** ± of the depth at which the metal ends. */
  readonly errorMm: number;
}

/** The thinnest metal from an end of a cut on, away from the face (1) or toward it (−1); null where none is in reach. */
function floorOf(
  layers: readonly SectionLayer[],
  cut: Polygons,
  depth: BandCut['depth'],
  way: 1 | -1,
  reachMm: number,
): Floor | null {
  if (depth === null || cut.length === 0) return null;
  const start = way === 1 ? depth.toMm : depth.fromMm;
  const box = boxRound(cut, 0);
  const solids = layers.map(({ section, depth: own, metal }) => {
    // told along the way that is looked: from its near end to its far one
    const [fromMm, toMm] = way === 1 ? [own.fromMm - start, own.toMm - start] : [start - own.toMm, start - own.fromMm];
    const end = way === 1 ? own.toMm : own.fromMm;
    const isOwnEnd = end === section.depth?.toMm || end === section.depth?.fromMm;
    return { fromMm, toMm, metal: solidNear(metal, box), errorMm: isOwnEnd && end !== 0 ? section.depthErrorMm : 0 };
  });
  const ends = [...new Set([0, ...solids.flatMap(({ fromMm, toMm }) => [fromMm, toMm])])]
    .filter((mm) => mm >= 0)
    .sort((a, b) => a - b);
  let over = cut;
  for (const [i, mm] of ends.entries()) {
    if (mm > reachMm) return null;
    // what goes on unchanged need not be looked at again
    const next = metalAt(solids, { fromMm: mm, toMm: ends[i + 1] ?? mm + 1 });
    // a ledge narrower than it is thick is an edge, as in the plane what is not farther round is its own flank
    const gone = i === 0 ? null : inThePlane(difference(over, next), Math.max(edgeMm, mm));
    if (gone !== null) {
      const ending = solids.filter((solid) => solid.toMm === mm).map(({ errorMm }) => errorMm);
      return { mm, at: gone, errorMm: Math.max(0, ...ending) };
    }
    over = intersection(over, next);
    if (inThePlane(over, edgeMm) === null) return null;
  }
  return null;
}

const metalAt = (
  solids: readonly (DepthRange & { readonly metal: Polygons })[],
  { fromMm, toMm }: DepthRange,
): Polygons =>
  union(solids.filter((solid) => solid.fromMm <= fromMm && toMm <= solid.toMm).flatMap(({ metal }) => metal));

/** A place well within some metal; null where none of it is so wide. */
function inThePlane(metal: Polygons, wideMm: number): Vec | null {
  // a disc of half that width would not fit into so little
  if (areaMm2(metal) < (Math.PI / 4) * wideMm * wideMm) return null;
  return offset(outlinesOf(metal), -wideMm / 2, roughMm, 'outside').polygons[0]?.[0] ?? null;
}

/** How wide a floor is need not be known better, mm. */
const roughMm = 0.01;
