import { type Depth, deepest } from '../clearance/deepest.ts';
import { metalLeft } from '../clearance/metal-left.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { offset } from '../geometry/offset.ts';
import { difference, engineErrorMm, intersection, pieces, union } from '../geometry/polygon-engine.ts';
import { polygonise } from '../geometry/polygonise.ts';
import { areaMm2, loopsOf, outlinesOf, type Polygons } from '../geometry/polygons.ts';
import type { Progress } from '../geometry/progress.ts';
import { soundPolygons } from '../geometry/sound-polygons.ts';
import type { Joint } from '../joint/joint.ts';
import type { DepthRange, DoNotCut, Section } from '../model/casting.ts';
import type { Cutter } from '../model/job.ts';
import { type Band, heldToMm, type NearPass } from './bands.ts';
import type { Narrow, Needed } from './corner-relief.ts';
import { type CutterShape, type CutterWay, shapeForCutter } from './cutter-shape.ts';
import { metalOf } from './metal.ts';
import { clearanceOf, errorOf, leastRoom, mostRoom, plannedRoom, roomForDisc } from './room-needed.ts';
import { cutPast, type Slice } from './run-out.ts';
import { type AsItWas, straightBoundMm, straightened } from './straight-edge.ts';
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
  /** What the clearance alone would take, whatever the cutter, and its volume; null without depth. */
  readonly neededMm2: number;
  readonly neededMm3: number | null;
  /** How it is shaped for the cutter; null without one. */
  readonly way: CutterWay | null;
  readonly narrow: readonly Narrow[];
  /** What an edge a grinder can follow takes beyond that; null where none was asked for. */
  readonly straight: StraightBand | null;
}

/** What the straight edge of a band makes of it. */
export interface StraightBand {
  readonly extraMm2: number;
  /** The least radius of the arcs in its internal corners. */
  readonly radiusMm: number;
  readonly asItWas: readonly AsItWas[];
}

export interface Refused {
  readonly doNotCut: string;
  readonly areaMm2: number;
  readonly at: Depth['at'];
}

/** What a section's cuts depend on beside the section. */
export interface Bench {
  readonly joint: Joint;
  readonly doNotCut: readonly DoNotCut[];
  readonly sweeps: Sweeps;
  /** Null where none is named, or where it is not to be cut anyway. */
  readonly cutter: Cutter | null;
  /** Whether the edges of cuts are to be ones a grinder can follow. */
  readonly straight: boolean;
  /** Other sections of the same casting. */
  readonly beside: readonly Section[];
}

/**
 * The least cut that gives a section's bands the clearance asked and that the cutter can make, less what must not be
 * cut. A band is cut past its ends where the nose of the cutter would leave a fillet, and split where a region that must
 * not be cut ends within it; none where only shavings would go.
 */
export function* cutBands(
  bench: Bench,
  section: Section,
  bands: readonly Band[],
): Generator<Progress, readonly BandCut[]> {
  const metal = metalOf(section.loops, toleranceMm, 'outside');
  const needs: BandNeed[] = [];
  for (const band of bands) needs.push(...(yield* bandNeed(bench, section, metal, band)));
  const cuts: BandCut[] = [];
  for (const slice of cutPast(needs, section.depth, pastMm(bench.cutter))) {
    yield { step: `${section.id}, what is left`, done: cuts.length, of: bands.length };
    cuts.push(...sliceCuts(bench, metal, slice));
  }
  return cuts;
}

/** How far the cut goes past a band's ends, so that no fillet of a ball nose stands in it. */
export const pastMm = (cutter: Cutter | null): number =>
  cutter?.nose === 'ball' && cutter.runOut === 'cut-past' ? cutter.radiusMm : 0;

/** The lines of one band before anything is refused, and before it is cut past its ends. */
interface BandNeed {
  readonly depth: DepthRange | null;
  readonly needed: Polygons;
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
  readonly boundMm: number;
  readonly way: CutterWay | null;
  readonly narrow: readonly Narrow[];
  /** How far at worst the line as marked out lies from where it should. */
  readonly errorMm: number;
  /** What every corner of the cut has room for. */
  readonly discMm: number;
}

function* bandNeed(bench: Bench, section: Section, metal: Polygons, band: Band): Generator<Progress, BandNeed[]> {
  const { joint, sweeps } = bench;
  yield { step: `${section.id}, the room needed`, done: 0, of: 3 };
  const short = band.passes.filter(({ shortMm }) => shortMm > 0);
  const room = plannedRoom(joint, short, sweeps, toleranceMm);
  const slackMm = Math.min(heldToMm, ...short.map((pass) => clearanceOf(joint, pass))) - toleranceMm;
  const whole = intersection(metal, room.polygons);
  const beyondRoom = difference(metal, room.polygons);
  const needed = slackMm > 0 ? withoutShavings(whole, beyondRoom, slackMm) : whole;
  if (needed.length === 0) return [];
  const left = needed === whole ? beyondRoom : metalLeft(metal, needed);
  yield { step: `${section.id}, the cutter`, done: 1, of: 3 };
  const shape = shapedFor(bench, { metal, needed, left }, band, short);
  yield { step: `${section.id}, first and last line`, done: 2, of: 3 };
  const least = leastRoom(joint, short, sweeps, toleranceMm).polygons;
  const most = mostRoom(joint, band.passes, sweeps, toleranceMm).polygons;
  const errorMm = Math.max(...band.passes.map((pass) => errorOf(joint, pass)));
  const need: BandNeed = {
    depth: band.depth,
    needed,
    planned: shape.cut,
    first: intersection(metalOf(section.loops, toleranceMm, 'inside'), least),
    last: intersection(metal, [...most, ...movedBy(shape.extra, errorMm)]),
    boundMm: toleranceMm + room.boundMm + shape.boundMm,
    way: shape.way,
    narrow: shape.narrow,
    errorMm,
    discMm: bench.cutter?.radiusMm ?? Math.min(...short.map((pass) => clearanceOf(joint, pass))),
  };
  return [need];
}

type Shaped = Pick<BandNeed, 'way'> & Omit<CutterShape, 'way'>;

function shapedFor(bench: Bench, need: Omit<Needed, 'beside'>, band: Band, short: readonly NearPass[]): Shaped {
  const { joint, sweeps, cutter } = bench;
  if (cutter === null) return { way: null, cut: need.needed, extra: [], narrow: [], boundMm: 0 };
  const beside = bench.beside.filter((other) => sharesDepth(other.depth, band.depth));
  const kept = bench.doNotCut.filter((region) => sharesDepth(region.depth, band.depth));
  return shapeForCutter(
    { ...need, beside: union(beside.flatMap(({ loops }) => polygonise(loops, toleranceMm, 'outside'))) },
    () => roomForDisc(joint, short, sweeps, toleranceMm, cutter.radiusMm).polygons,
    cutter.radiusMm,
    kept.length === 0 ? null : (cut) => kept.some((region) => biteOf(cut, region) !== null),
  );
}

/** What is taken beyond need moves with the line, and so as far past it at worst. */
const movedBy = (extra: Polygons, errorMm: number): Polygons =>
  extra.length === 0 || errorMm === 0 ? extra : offset(outlinesOf(extra), errorMm, toleranceMm, 'outside').polygons;

function sliceCuts(bench: Bench, metal: Polygons, { depth, cuts }: Slice<BandNeed>): BandCut[] {
  const all = (of: (cut: BandNeed) => Polygons): Polygons =>
    cuts.length === 1 ? of(cuts[0] as BandNeed) : union(cuts.flatMap(of));
  const shaped = {
    planned: all(({ planned }) => planned),
    first: all(({ first }) => first),
    last: all(({ last }) => last),
  };
  const { lines, extra, straight } = straightLines(bench, metal, { depth, cuts }, shaped);
  const inTheWay = bench.doNotCut.filter(
    (region) => sharesDepth(region.depth, depth) && biteOf(lines.planned, region) !== null,
  );
  const shared = {
    neededMm2: areaMm2(all(({ needed }) => needed)),
    way: wayOf(cuts),
    narrow: cuts.flatMap(({ narrow }) => narrow),
  };
  const boundMm = Math.max(...cuts.map((cut) => cut.boundMm)) + (straight === null ? 0 : straightBoundMm);
  return rangesOf(depth, inTheWay).map((range) => {
    const refused = inTheWay.filter((region) => sharesDepth(region.depth, range));
    return {
      ...bandCut(metal, range, lines, refused, boundMm),
      ...shared,
      neededMm3: neededMm3(cuts, range),
      straight: straight && { ...straight, extraMm2: areaMm2(withoutRefused(extra, refused)) },
    };
  });
}

/** Lines with an edge a grinder can follow, where one is asked for: what that adds bites nothing that must not be cut. */
function straightLines(
  bench: Bench,
  metal: Polygons,
  { depth, cuts }: Slice<BandNeed>,
  lines: Lines,
): { lines: Lines; extra: Polygons; straight: Omit<StraightBand, 'extraMm2'> | null } {
  if (!bench.straight) return { lines, extra: [], straight: null };
  const keep = bench.doNotCut
    .filter((region) => sharesDepth(region.depth, depth) && biteOf(lines.planned, region) === null)
    .map(({ loops }) => union(polygonise(loops, toleranceMm, 'outside')));
  const radiusMm = Math.min(...cuts.map(({ discMm }) => discMm));
  const { cut: planned, asItWas } = straightened(metal, lines.planned, keep, radiusMm);
  const extra = difference(planned, lines.planned);
  const errorMm = Math.max(...cuts.map((cut) => cut.errorMm));
  const last = union([...lines.last, ...intersection(metal, movedBy(extra, errorMm))]);
  return { lines: { ...lines, planned, last }, extra, straight: { radiusMm, asItWas } };
}

const wayOf = (cuts: readonly BandNeed[]): CutterWay | null =>
  cuts.map(({ way }) => way).find((way) => way !== 'as-needed') ?? cuts[0]?.way ?? null;

/** The volume the clearance alone takes of a range of depth. */
function neededMm3(cuts: readonly BandNeed[], range: DepthRange | null): number | null {
  if (range === null) return null;
  return cuts.reduce((sum, { depth, needed }) => {
    const { fromMm, toMm } = depth ?? range;
    return sum + areaMm2(needed) * Math.max(0, Math.min(toMm, range.toMm) - Math.max(fromMm, range.fromMm));
  }, 0);
}

interface Lines {
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
}

type PlainCut = Omit<BandCut, 'neededMm2' | 'neededMm3' | 'way' | 'narrow' | 'straight'>;

function bandCut(
  metal: Polygons,
  depth: DepthRange | null,
  lines: Lines,
  refused: readonly DoNotCut[],
  boundMm: number,
): PlainCut {
  const allowed = (polygons: Polygons): Polygons => withoutRefused(polygons, refused);
  const planned = soundPolygons(allowed(lines.planned), 'outside');
  const left = soundPolygons(metalLeft(metal, planned.polygons), 'outside').polygons;
  return {
    depth,
    planned: planned.polygons,
    first: soundPolygons(intersection(allowed(lines.first), planned.polygons), 'inside').polygons,
    last: soundPolygons(union([...allowed(lines.last), ...planned.polygons]), 'outside').polygons,
    left,
    takeOff: deepest(planned.polygons, buildOutlineTree(loopsOf(left)), buildOutlineTree(loopsOf(metal))),
    refused: refused.flatMap((region) => biteOf(lines.planned, region) ?? []),
    boundMm: boundMm + planned.boundMm + 3 * engineErrorMm,
  };
}

function withoutRefused(polygons: Polygons, refused: readonly DoNotCut[]): Polygons {
  if (refused.length === 0) return polygons;
  return difference(polygons, union(refused.flatMap((region) => polygonise(region.loops, toleranceMm, 'outside'))));
}

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

/** What a cut would take from a region that must not be cut; null where it only grazes it. */
function biteOf(planned: Polygons, region: DoNotCut): Refused | null {
  const bite = intersection(planned, union(polygonise(region.loops, toleranceMm, 'inside')));
  const at = offset(outlinesOf(bite), -heldToMm / 2, toleranceMm, 'outside').polygons[0]?.[0];
  return at === undefined ? null : { doNotCut: region.id, areaMm2: areaMm2(bite), at };
}

/** Ranges that overlap; without depth means every depth. */
export const sharesDepth = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a === null || b === null || (a.fromMm < b.toMm && b.fromMm < a.toMm);

/** A band's depth cut where regions begin and end within it. */
function rangesOf(depth: DepthRange | null, regions: readonly DoNotCut[]): (DepthRange | null)[] {
  if (depth === null) return [null];
  const ends = regions.flatMap((region) => (region.depth === null ? [] : [region.depth.fromMm, region.depth.toMm]));
  const inner = ends.filter((mm) => mm > depth.fromMm && mm < depth.toMm).sort((a, b) => a - b);
  const stops = [depth.fromMm, ...new Set(inner), depth.toMm];
  return stops.slice(1).map((toMm, i) => ({ fromMm: stops[i] as number, toMm }));
}
