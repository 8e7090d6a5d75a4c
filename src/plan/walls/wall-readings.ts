import { treeOf } from '../../clearance/trees.ts';
import { leastDistance } from '../../geometry/motion/least-distance.ts';
import { still } from '../../geometry/motion/motion.ts';
import type { OutlineTree } from '../../geometry/motion/outline-tree.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import { identity } from '../../geometry/plane/rigid.ts';
import { distance, type Vec } from '../../geometry/plane/vec.ts';
import { pieces } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound } from '../../geometry/polygons/solid-near.ts';
import { remembered } from '../../geometry/remembered.ts';
import type { Casting, DepthRange, Hollow, Section, WallReading } from '../../job/casting.ts';
import type { Fit } from '../../job/job.ts';
import type { BandCut } from '../bands/cut-band.ts';
import { gapMm } from '../bands/depth-ranges.ts';
import type { SectionCut } from '../bands/layers.ts';
import { metalOf } from '../bands/metal.ts';
import { toleranceMm } from '../bands/tolerance.ts';
import { biteOf } from '../cutter/bite.ts';
import { treeOfLine } from './guard-distance.ts';
import { type SurfacePlace, surfaceIn, takenAt } from './surface.ts';
import { handErrorOf, holdsWall } from './walls.ts';

/** A wall that was read, and what a cut leaves of it, mm. */
export interface ReadWall {
  readonly section: string;
  /** Of the band that is cut. */
  readonly depth: DepthRange | null;
  /** Where it was read, and what. */
  readonly at: Vec;
  readonly readAtDepthMm: number;
  readonly readMm: number;
  /** What the last line takes there, square to the surface; what is then left, the reading's error and the hand's off. */
  readonly takeOffMm: number;
  readonly wallMm: number;
  /** The same where most is taken of all the places it speaks for. */
  readonly mostTakeOffMm: number;
  readonly mostAt: Vec;
  readonly leastWallMm: number;
  readonly keepMm: number | null;
  readonly holds: boolean | null;
}

/** A cut with places for which neither a hollow nor a reading speaks, and the deepest of those. */
export interface UnmeasuredCut {
  readonly section: string;
  readonly depth: DepthRange | null;
  readonly at: Vec;
  readonly atDepthMm: number | null;
}

/** A reading speaks for places within its own wall's thickness of its own, or within this, mm; common practice, no source. */
const leastReachMm = 10;

/** A hollow speaks for a cut within this of it, mm; common practice, no source. */
const besideMm = 25;

export const reachMm = ({ wallMm }: WallReading): number => Math.max(leastReachMm, wallMm);

/**
 * The walls that a reading tells of. A reading is the metal between the surface at its place and the hollow behind it,
 * square to the surface: it is charged with what the last line takes there, square to the surface, and with the most
 * taken at any place that it speaks for; its own error and the hand's are taken off.
 */
export const wallsRead = (reading: WallReading, cuts: readonly SectionCut[], fit: Fit): ReadWall[] =>
  cuts.flatMap(({ section, bands }) => bands.flatMap((band) => readWall(reading, section, band, fit) ?? []));

function readWall(reading: WallReading, section: Section, band: BandCut, fit: Fit): ReadWall | null {
  const { at, depthMm, wallMm, errorMm } = reading;
  const reach = reachMm(reading);
  const alongMm = gapMm(band.lastDepth, { fromMm: depthMm, toMm: depthMm });
  if (alongMm > reach) return null;
  const last = treeOfLine(band.last);
  const about = Math.sqrt(reach * reach - alongMm * alongMm);
  const spoken = surfaceIn(metalOf(section.loops, toleranceMm, 'outside'), boxAbout(at, about))
    .filter((place) => distance(place.at, at) <= about)
    .map((place) => ({ place, takenMm: takenAt(place, last) }));
  const most = greatest(spoken);
  if (most === null || most.takenMm === 0) return null;
  const here = alongMm > 0 ? 0 : (nearest(spoken, at)?.takenMm ?? 0);
  const left = (takenMm: number): number => wallMm - takenMm - errorMm - handErrorOf(fit);
  const keepMm = fit.minWallMm;
  return {
    section: section.id,
    depth: band.depth,
    at,
    readAtDepthMm: depthMm,
    readMm: wallMm,
    takeOffMm: here,
    wallMm: left(here),
    mostTakeOffMm: most.takenMm,
    mostAt: most.place.at,
    leastWallMm: left(most.takenMm),
    keepMm,
    holds: holdsWall(left(most.takenMm), keepMm),
  };
}

interface Removal {
  readonly place: SurfacePlace;
  readonly takenMm: number;
}

const greatest = (all: readonly Removal[]): Removal | null =>
  all.reduce<Removal | null>((most, one) => (most !== null && most.takenMm >= one.takenMm ? most : one), null);

const nearest = (all: readonly Removal[], to: Vec): Removal | null =>
  all.reduce<Removal | null>(
    (best, one) => (best !== null && distance(best.place.at, to) <= distance(one.place.at, to) ? best : one),
    null,
  );

const boxAbout = ({ x, y }: Vec, byMm: number): Box => ({
  minX: x - byMm,
  minY: y - byMm,
  maxX: x + byMm,
  maxY: y + byMm,
});

/**
 * The cuts with places for which neither a hollow nearby nor a reading speaks, each with the deepest of those places; not
 * where the metal comes off altogether, for then no wall is left to be measured. Yields wherever it may have taken long.
 */
export function* unmeasuredCuts(casting: Casting, cuts: readonly SectionCut[]): Generator<void, UnmeasuredCut[]> {
  const unmeasured: UnmeasuredCut[] = [];
  for (const { section, bands } of cuts) {
    const metal = metalOf(section.loops, toleranceMm, 'outside');
    for (const band of bands) {
      for (const piece of pieces(band.planned)) {
        yield;
        const tree = treeOfLine(piece);
        if (casting.hollows.some((hollow) => isBeside(hollow, band.depth, tree))) continue;
        if (comesOffWhole(metal, piece)) continue;
        const place = unspokenFor(casting.wallReadings, metal, piece, band.depth);
        if (place === null) continue;
        unmeasured.push({ section: section.id, depth: band.depth, at: place.at, atDepthMm: place.depthMm });
      }
    }
  }
  return unmeasured;
}

/** Metal that hangs together. */
interface Body {
  readonly loops: Region;
  readonly areaMm2: number;
}

const known = remembered<readonly Body[]>(1);

/** Worked out once of the same metal: every piece of every cut asks. */
const bodiesOf = (metal: Polygons): readonly Body[] =>
  known(metal, '', () => pieces(metal).map((body) => ({ loops: loopsOf(body), areaMm2: areaMm2(body) })));

/** Whether a piece of a cut is all there is of the metal that it is cut from. */
function comesOffWhole(metal: Polygons, piece: Polygons): boolean {
  const mostMm2 = areaMm2(piece) * (1 + 1e-3);
  const bodies = bodiesOf(metal);
  if (bodies.every((body) => body.areaMm2 >= mostMm2)) return false;
  let fromMm2 = 0;
  for (const body of bodies) {
    if (biteOf(piece, body.loops) !== null) fromMm2 += body.areaMm2;
    if (fromMm2 >= mostMm2) return false;
  }
  return fromMm2 > 0;
}

/** The deepest place of a cut that no reading speaks for, and a depth at which none does; null where all are spoken for. */
function unspokenFor(
  readings: readonly WallReading[],
  metal: Polygons,
  piece: Polygons,
  depth: DepthRange | null,
): { at: Vec; depthMm: number | null } | null {
  const cut = treeOfLine(piece);
  const onSurface = surfaceIn(metal, boxRound(piece, 0))
    .map((place) => ({ at: place.at, takenMm: takenAt(place, cut) }))
    .filter(({ takenMm }) => takenMm > 0);
  // an opening within the metal has no surface yet: its own edge then
  const places = onSurface.length > 0 ? onSurface : piece.flat().map((at) => ({ at, takenMm: 0 }));
  const depths = depth === null ? [null] : [(depth.fromMm + depth.toMm) / 2, depth.fromMm, depth.toMm];
  for (const { at } of places.toSorted((a, b) => b.takenMm - a.takenMm)) {
    const silent = depths.find((mm) => !readings.some((reading) => speaksFor(reading, at, mm)));
    if (silent !== undefined) return { at, depthMm: silent };
  }
  return null;
}

const speaksFor = (reading: WallReading, at: Vec, depthMm: number | null): boolean =>
  Math.hypot(distance(reading.at, at), depthMm === null ? 0 : reading.depthMm - depthMm) <= reachMm(reading);

function isBeside(hollow: Hollow, depth: DepthRange | null, tree: OutlineTree): boolean {
  const { distanceMm } = leastDistance(tree, treeOf(hollow.loops), identity, still);
  const mm = Math.max(besideMm, 2 * (hollow.keepWallMm ?? 0));
  return Math.hypot(distanceMm, gapMm(depth, hollow.depth)) <= mm;
}
