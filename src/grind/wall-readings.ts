import { type Depth, deepest } from '../clearance/deepest.ts';
import { metalLeft } from '../clearance/metal-left.ts';
import { treeOf } from '../clearance/trees.ts';
import type { Box } from '../geometry/edge-box.ts';
import { regionContains } from '../geometry/motion/containment.ts';
import { leastDistance } from '../geometry/motion/least-distance.ts';
import { still } from '../geometry/motion/motion.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { pieces } from '../geometry/polygon-engine.ts';
import { loopsOf, type Polygons } from '../geometry/polygons.ts';
import { identity } from '../geometry/rigid.ts';
import { round6, roundPoint6 } from '../geometry/rounding.ts';
import { boxRound, solidNear } from '../geometry/solid-near.ts';
import { vec } from '../geometry/vec.ts';
import type { Casting, DepthRange, Hollow, Section, WallReading } from '../model/casting.ts';
import type { GrindAnswer, ReadWall } from '../model/grind-answer.ts';
import type { Fit } from '../model/job.ts';
import { toleranceMm } from './tolerance.ts';
import type { SectionCut } from './layers.ts';
import { metalOf } from './metal.ts';
import { gapMm, handErrorOf } from './walls.ts';

/** A reading, or a hollow, speaks for a cut within this of it, mm, in the plane and in depth; common practice, no source. */
const inReachMm = 25;

/** One piece of a cut in one band. */
interface CutPiece {
  readonly section: Section;
  readonly depth: DepthRange | null;
  readonly piece: Polygons;
}

/**
 * The walls that readings tell of: what was read, less the most that the last line takes off the piece of cut nearest by,
 * the reading's error and the hand's.
 */
export function readWalls({ wallReadings }: Casting, cuts: readonly SectionCut[], fit: Fit): ReadWall[] {
  if (wallReadings.length === 0) return [];
  return piecesOf(cuts, 'last').flatMap(({ section, depth, piece }) => {
    const tree = buildOutlineTree(loopsOf(piece));
    const near = wallReadings.filter((reading) => isNear(reading, depth, tree));
    if (near.length === 0) return [];
    const takeOff = takeOffOf(section, piece);
    // where nothing is left of the section, nothing is left of its wall
    return near.map((reading) => readWall(reading, section, depth, takeOff?.mm ?? reading.wallMm, fit));
  });
}

function readWall(
  { at, depthMm, wallMm, errorMm }: WallReading,
  section: Section,
  depth: DepthRange | null,
  takeOffMm: number,
  fit: Fit,
): ReadWall {
  const left = wallMm - takeOffMm - errorMm - handErrorOf(fit);
  const keepMm = fit.minWallMm;
  return {
    section: section.id,
    depth: depth && [round6(depth.fromMm), round6(depth.toMm)],
    at: roundPoint6(at),
    readAtDepthMm: round6(depthMm),
    readMm: round6(wallMm),
    takeOffMm: round6(takeOffMm),
    wallMm: round6(left),
    keepMm: keepMm === null ? null : round6(keepMm),
    holds: left <= 0 ? false : keepMm === null ? null : left >= keepMm - 1e-3,
  };
}

/** The pieces of a cut near which neither a hollow nor a reading is known. */
export function unmeasuredCuts(
  { hollows, wallReadings }: Casting,
  cuts: readonly SectionCut[],
): GrindAnswer['unmeasured'] {
  return piecesOf(cuts, 'planned')
    .filter(({ depth, piece }) => {
      const tree = buildOutlineTree(loopsOf(piece));
      return (
        !hollows.some((hollow) => isBeside(hollow, depth, tree)) &&
        !wallReadings.some((reading) => isNear(reading, depth, tree))
      );
    })
    .map(({ section, depth, piece }) => ({
      section: section.id,
      depth: depth && ([round6(depth.fromMm), round6(depth.toMm)] as [number, number]),
      at: roundPoint6(takeOffOf(section, piece)?.at ?? piece[0]?.[0] ?? vec(0, 0)),
    }));
}

/**
 * How deep a piece of a cut goes: only the metal about it is looked at, as far as it turns out to go. Null where nothing
 * is left of the section.
 */
function takeOffOf(section: Section, piece: Polygons): Depth | null {
  const metal = metalOf(section.loops, toleranceMm, 'outside');
  const whole = boxRound(metal, 0);
  for (let aboutMm = 5; ; aboutMm *= 4) {
    const box = boxRound(piece, aboutMm);
    const near = solidNear(metal, box);
    const left = buildOutlineTree(loopsOf(metalLeft(near, piece)));
    const depth = deepest(piece, left, buildOutlineTree(loopsOf(near)));
    // what is nearer than the box's sides is the section's own outline
    if ((depth !== null && depth.mm < aboutMm) || holds(box, whole)) return depth;
  }
}

const holds = (outer: Box, inner: Box): boolean =>
  outer.minX <= inner.minX && outer.minY <= inner.minY && outer.maxX >= inner.maxX && outer.maxY >= inner.maxY;

const piecesOf = (cuts: readonly SectionCut[], line: 'planned' | 'last'): CutPiece[] =>
  cuts.flatMap(({ section, bands }) =>
    bands.flatMap((band) => pieces(band[line]).map((piece) => ({ section, depth: band.depth, piece }))),
  );

function isNear({ at, depthMm }: WallReading, depth: DepthRange | null, tree: OutlineTree): boolean {
  if (gapMm(depth, { fromMm: depthMm, toMm: depthMm }) > inReachMm) return false;
  return regionContains(tree, at.x, at.y) || nearestOnOutline(tree, at).distanceMm <= inReachMm;
}

function isBeside(hollow: Hollow, depth: DepthRange | null, tree: OutlineTree): boolean {
  const { distanceMm } = leastDistance(tree, treeOf(hollow.loops), identity, still);
  const reachMm = Math.max(inReachMm, 2 * (hollow.keepWallMm ?? 0));
  return Math.hypot(distanceMm, gapMm(depth, hollow.depth)) <= reachMm;
}
