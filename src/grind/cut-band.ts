import { type Depth, deepest } from '../clearance/deepest.ts';
import { metalLeft } from '../clearance/metal-left.ts';
import { treeOf } from '../clearance/trees.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { offset } from '../geometry/offset.ts';
import { difference, engineErrorMm, intersection, pieces, union } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import { areaMm2, loopsOf, outlinesOf, type Polygons } from '../geometry/polygons.ts';
import { soundPolygons } from '../geometry/sound-polygons.ts';
import type { Joint } from '../joint/joint.ts';
import type { DepthRange, DoNotCut, Section } from '../model/casting.ts';
import { type Band, heldToMm } from './bands.ts';
import { leastRoom, mostRoom, plannedRoom } from './room-needed.ts';
import type { Sweeps } from './sweeps.ts';

/** Every approximation of a cut, arcs and round corners alike, keeps within this on the side of more clearance. */
export const toleranceMm = 1e-4;

/** What is cut from one band of a section; polygons in the joint frame, mm. */
export interface BandCut {
  readonly depth: DepthRange | null;
  readonly planned: Polygons;
  /** Lies in `planned`: must go even if every error is in the builder's favour. */
  readonly first: Polygons;
  /** Holds `planned`: never past it. */
  readonly last: Polygons;
  readonly left: Polygons;
  /** Null where nothing is left. */
  readonly takeOff: Depth | null;
  /** What ought to go but must not be cut. */
  readonly refused: readonly Refused[];
  readonly boundMm: number;
}

export interface Refused {
  readonly doNotCut: string;
  readonly areaMm2: number;
  readonly at: Depth['at'];
}

/**
 * The least cut that gives a band the clearance asked, less what must not be cut: one band, or several where a region
 * that must not be cut ends within it; none where only shavings would go.
 */
export function cutBand(
  joint: Joint,
  section: Section,
  band: Band,
  doNotCut: readonly DoNotCut[],
  sweeps: Sweeps,
): BandCut[] {
  const metal = union(polygonise(section.loops, toleranceMm, 'outside'));
  const short = band.passes.filter(({ shortMm }) => shortMm > 0);
  const room = plannedRoom(joint, short, sweeps, toleranceMm);
  const planned = withoutShavings(intersection(metal, room.polygons), difference(metal, room.polygons));
  if (planned.length === 0) return [];
  const least = leastRoom(joint, short, sweeps, toleranceMm).polygons;
  const lines = {
    planned,
    first: intersection(union(polygonise(section.loops, toleranceMm, 'inside')), least),
    last: intersection(metal, mostRoom(joint, band.passes, sweeps, toleranceMm).polygons),
  };
  const inTheWay = doNotCut.filter(
    (region) => sharesDepth(region.depth, band.depth) && biteOf(planned, region) !== null,
  );
  return rangesOf(band.depth, inTheWay).map((depth) => {
    const refused = inTheWay.filter((region) => sharesDepth(region.depth, depth));
    return bandCut(section, metal, depth, lines, refused, toleranceMm + room.boundMm);
  });
}

interface Lines {
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
}

function bandCut(
  section: Section,
  metal: Polygons,
  depth: DepthRange | null,
  lines: Lines,
  refused: readonly DoNotCut[],
  boundMm: number,
): BandCut {
  const keep = union(refused.flatMap((region) => polygonise(region.loops, toleranceMm, 'outside')));
  const allowed = (polygons: Polygons): Polygons => (refused.length === 0 ? polygons : difference(polygons, keep));
  const planned = soundPolygons(allowed(lines.planned), 'outside');
  const left = soundPolygons(metalLeft(metal, planned.polygons), 'outside').polygons;
  return {
    depth,
    planned: planned.polygons,
    first: soundPolygons(intersection(allowed(lines.first), planned.polygons), 'inside').polygons,
    last: soundPolygons(union([...allowed(lines.last), ...planned.polygons]), 'outside').polygons,
    left,
    takeOff: deepest(planned.polygons, buildOutlineTree(loopsOf(left)), treeOf(section.loops)),
    refused: refused.flatMap((region) => biteOf(lines.planned, region) ?? []),
    boundMm: boundMm + planned.boundMm + 3 * engineErrorMm,
  };
}

/**
 * Pieces that lie within what the clearance is held to of metal that stays can stay as well: they are what the
 * approximations alone would take off a wall that is just clear.
 */
function withoutShavings(planned: Polygons, left: Polygons): Polygons {
  if (left.length === 0) return planned;
  const tree = buildOutlineTree(loopsOf(left));
  const withinMm = heldToMm - toleranceMm;
  const parts = pieces(planned);
  const thin = parts.filter((piece) => piece.flat().every((p) => nearestOnOutline(tree, p).distanceMm < withinMm));
  if (thin.length === 0) return planned;
  const near = offset(outlinesOf(left), withinMm, toleranceMm / 10, 'inside').polygons;
  return parts.filter((piece) => !thin.includes(piece) || difference(piece, near).length > 0).flat();
}

/** What a cut would take from a region that must not be cut; null where it only grazes it. */
function biteOf(planned: Polygons, region: DoNotCut): Refused | null {
  const bite = intersection(planned, union(polygonise(region.loops, toleranceMm, 'inside')));
  const at = offset(outlinesOf(bite), -heldToMm / 2, toleranceMm, 'outside').polygons[0]?.[0];
  return at === undefined ? null : { doNotCut: region.id, areaMm2: areaMm2(bite), at };
}

/** Ranges that overlap; without depth means every depth. */
const sharesDepth = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a === null || b === null || (a.fromMm < b.toMm && b.fromMm < a.toMm);

/** A band's depth cut where regions begin and end within it. */
function rangesOf(depth: DepthRange | null, regions: readonly DoNotCut[]): (DepthRange | null)[] {
  if (depth === null) return [null];
  const ends = regions.flatMap((region) => (region.depth === null ? [] : [region.depth.fromMm, region.depth.toMm]));
  const inner = ends.filter((mm) => mm > depth.fromMm && mm < depth.toMm).sort((a, b) => a - b);
  const stops = [depth.fromMm, ...new Set(inner), depth.toMm];
  return stops.slice(1).map((toMm, i) => ({ fromMm: stops[i] as number, toMm }));
}
