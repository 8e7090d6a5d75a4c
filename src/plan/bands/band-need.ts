import type { Narrow } from '../../geometry/cutting/corner-relief.ts';
import { metalLeft } from '../../geometry/cutting/metal-left.ts';
import { nearestOnOutline } from '../../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../geometry/polygons/polygonise.ts';
import { loopsOf, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound } from '../../geometry/polygons/solid-near.ts';
import { type Progress, showing } from '../../geometry/progress.ts';
import { numberOf, remembered } from '../../geometry/remembered.ts';
import type { DepthRange, DoNotCut, Section } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import type { Joint } from '../../joint/joint.ts';
import { biteOf, thickPieces } from '../cutter/bite.ts';
import { type CutterShape, type CutterWay, shapeForCutter } from '../cutter/cutter-shape.ts';
import { type Band, heldToMm } from './bands.ts';
import { depthsParted, sharesDepth } from './depth-ranges.ts';
import { metalOf } from './metal.ts';
import { clearanceOf, errorOf, leastRoom, mostRoom, plannedRoom, type RoomQuery, roomForDisc } from './room-needed.ts';
import type { Sweeps } from './sweeps.ts';
import { toleranceMm } from './tolerance.ts';

/** The lines of one band of a section before anything is refused, and before it is cut past its ends. */
export interface BandNeed {
  readonly section: Section;
  readonly depth: DepthRange | null;
  readonly needed: Polygons;
  /** As shaped for the cutter; holds what is needed. */
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
  readonly boundMm: number;
  readonly way: CutterWay | null;
  readonly narrow: readonly Narrow[];
  /** How far at worst the line as marked out lies from where it should, in the plane and along the depth. */
  readonly errorMm: number;
  readonly depthErrorMm: number;
  /** How much farther along the depth something may come than measured, with both sections' errors at their worst. */
  readonly reachErrorMm: number;
  /** What every corner of the cut has room for. */
  readonly discMm: number;
}

/** What a section's cuts depend on beside the section. */
export interface NeedConditions {
  readonly joint: Joint;
  readonly doNotCut: readonly DoNotCut[];
  readonly sweeps: Sweeps;
  /** Null where none is named, or where it is not to be cut anyway. */
  readonly cutter: Cutter | null;
  /** Other sections of the same casting. */
  readonly beside: readonly Section[];
}

/** What each band of a section has to lose for the clearance asked, in a shape that the cutter can make. */
export function* needsOfSection(
  conditions: NeedConditions,
  section: Section,
  bands: readonly Band[],
): Generator<Progress, BandNeed[]> {
  const needs: BandNeed[] = [];
  const lacks = lacksOf(conditions, section, bands);
  while (true) {
    const at = (what: string, done: number): Progress => ({ step: `${section.id}, ${what}`, done, of: 3 });
    yield at('the room needed', 0);
    const { value: lack } = lacks.next();
    if (lack === undefined) return needs;
    if (lack === null) continue;
    const shape = yield* showing(at('the cutter', 1), shapedFor(conditions, lack));
    needs.push(yield* showing(at('first and last line', 2), bandNeed(conditions, section, lack, shape)));
  }
}

/** What the clearance asks of a band of a section, before any cutter and any error. */
export interface Lack {
  readonly band: Band;
  /** All that stands there and is the section's alone. */
  readonly metal: Polygons;
  readonly needed: Polygons;
  readonly left: Polygons;
  readonly boundMm: number;
  readonly query: RoomQuery;
}

/** What the clearance asks of a section, band by band; worked out as it is asked for, null where it may be left meanwhile. */
export function* lacksOf(
  { joint, sweeps, beside }: Pick<NeedConditions, 'joint' | 'sweeps' | 'beside'>,
  section: Section,
  bands: readonly Band[],
): Generator<Lack | null, void> {
  if (bands.length === 0) return;
  const whole = metalOf(section.loops, toleranceMm, 'outside');
  const inIt = beside.filter((other) => !other.mayCut && sharesMetal(section, other));
  for (const band of bands) {
    const short = band.passes.filter(({ shortMm }) => shortMm > 0);
    const slackMm = Math.min(heldToMm, ...short.map((pass) => clearanceOf(joint, pass))) - toleranceMm;
    for (const depth of depthsParted(band.depth, inIt)) {
      const metal = less(
        whole,
        inIt.filter((other) => sharesDepth(other.depth, depth)),
      );
      const query = { joint, passes: short, box: boxRound(metal, 0), sweeps, toleranceMm };
      yield null;
      const room = plannedRoom(query);
      yield null;
      const within = intersection(metal, room.polygons);
      yield null;
      const beyond = difference(metal, room.polygons);
      const needed = slackMm > 0 ? withoutShavings(within, beyond, slackMm) : within;
      if (needed.length === 0) continue;
      const left = needed === within ? beyond : metalLeft(metal, needed);
      yield { band: { ...band, depth }, metal, needed, left, boundMm: room.boundMm, query };
    }
  }
}

const known = remembered<boolean>(64);

/** Whether two sections are drawn over one another, by more than a graze. */
const sharesMetal = (section: Section, other: Section): boolean =>
  known(section.loops, `${numberOf(other.loops)}`, () => {
    const metal = metalOf(section.loops, toleranceMm, 'outside');
    return biteOf(metal, other.loops) !== null;
  });

/** Metal that is a section's alone: what another, not offered, shares with it stays whatever is cut. */
const less = (metal: Polygons, others: readonly Section[]): Polygons =>
  others.length === 0
    ? metal
    : thickPieces(metalLeft(metal, union(others.flatMap(({ loops }) => metalOf(loops, toleranceMm, 'outside')))));

function* bandNeed(
  { joint, cutter }: NeedConditions,
  section: Section,
  { band, metal, needed, boundMm, query }: Lack,
  shape: ShapedNeed,
): Generator<void, BandNeed> {
  const least = leastRoom(query).polygons;
  yield;
  const most = mostRoom({ ...query, passes: band.atWorst }).polygons;
  yield;
  const first = intersection(metalOf(section.loops, toleranceMm, 'inside'), least);
  yield;
  const errorMm = Math.max(...band.atWorst.map((pass) => errorOf(joint, pass)));
  return {
    section,
    depth: band.depth,
    needed,
    planned: shape.cut,
    first,
    last: intersection(metal, [...most, ...movedBy(shape.extra, errorMm)]),
    boundMm: toleranceMm + boundMm + shape.boundMm,
    way: shape.way,
    narrow: shape.narrow,
    errorMm,
    depthErrorMm: Math.max(...query.passes.map((pass) => pass.section.depthErrorMm)),
    reachErrorMm: section.depthErrorMm + Math.max(...band.atWorst.map((pass) => pass.section.depthErrorMm)),
    discMm: cutter?.radiusMm ?? Math.min(...query.passes.map((pass) => clearanceOf(joint, pass))),
  };
}

type ShapedNeed = Pick<BandNeed, 'way'> & Omit<CutterShape, 'way'>;

function* shapedFor({ cutter, doNotCut, beside }: NeedConditions, lack: Lack): Generator<void, ShapedNeed> {
  const { band, metal, needed, left, query } = lack;
  if (cutter === null) return { way: null, cut: needed, extra: [], narrow: [], boundMm: 0 };
  const standing = beside.filter((other) => sharesDepth(other.depth, band.depth));
  const kept = doNotCut.filter((region) => sharesDepth(region.depth, band.depth));
  return yield* shapeForCutter(
    { metal, needed, left, beside: union(standing.flatMap(({ loops }) => polygonise(loops, toleranceMm, 'outside'))) },
    () => roomForDisc(query, cutter.radiusMm).polygons,
    cutter.radiusMm,
    kept.length === 0 ? null : (cut) => kept.some(({ loops }) => biteOf(cut, loops) !== null),
  );
}

/** What is taken beyond need moves with the line, and so as far past it at worst. */
export const movedBy = (extra: Polygons, errorMm: number): Polygons =>
  extra.length === 0 || errorMm === 0 ? extra : offset(outlinesOf(extra), errorMm, toleranceMm, 'outside').polygons;

/**
 * Pieces that lie within `slackMm` of metal that stays can stay as well, where clearances are held to no less: they are
 * what the approximations alone would take off a wall that is just clear.
 */
function withoutShavings(planned: Polygons, left: Polygons, slackMm: number): Polygons {
  if (left.length === 0) return planned;
  const tree = buildOutlineTree(loopsOf(left));
  const parts = pieces(planned);
  const thin = parts.filter((piece) => piece.flat().every((p) => nearestOnOutline(tree, p).distanceMm < slackMm));
  if (thin.length === 0) return planned;
  const near = offset(outlinesOf(left), slackMm, toleranceMm / 10, 'inside').polygons;
  return parts.filter((piece) => !thin.includes(piece) || difference(piece, near).length > 0).flat();
}
