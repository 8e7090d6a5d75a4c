import { type Depth, deepest } from '../../clearance/deepest.ts';
import type { Narrow } from '../../geometry/cutting/corner-relief.ts';
import { metalLeft } from '../../geometry/cutting/metal-left.ts';
import { type AsItWas, straightBoundMm, straightened } from '../../geometry/cutting/straight-edge.ts';
import { buildOutlineTree } from '../../geometry/motion/outline-tree.ts';
import { metalOnLeft } from '../../geometry/polygons/metal-on-left.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, engineErrorMm, intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { soundPolygons } from '../../geometry/polygons/sound-polygons.ts';
import { type Progress, showing } from '../../geometry/progress.ts';
import { remembered } from '../../geometry/remembered.ts';
import type { DepthRange, DoNotCut, Section } from '../../job/casting.ts';
import { biteOf } from '../cutter/bite.ts';
import type { CutterWay } from '../cutter/cutter-shape.ts';
import { movedBy } from './band-need.ts';
import { type CutLines, cutLines } from './cut-lines.ts';
import { commonDepth, depthsParted, sharesDepth } from './depth-ranges.ts';
import { metalOf } from './metal.ts';
import { type CutPiece, type Slice, slicesOf } from './run-out.ts';
import { arcsWithinMm, toleranceMm } from './tolerance.ts';

/** What is cut from one band of a section; polygons in the joint frame, mm. */
export interface BandCut {
  readonly depth: DepthRange | null;
  /** The depth never to go past, the errors of depth at their worst. */
  readonly lastDepth: DepthRange | null;
  readonly planned: Polygons;
  /** Lies in `planned`: must go even if every error is in the builder's favour. */
  readonly first: Polygons;
  /** Holds `planned`: never past it. */
  readonly last: Polygons;
  readonly lines: CutLines;
  readonly left: Polygons;
  /** Null where nothing is left. */
  readonly takeOff: Depth | null;
  /** What ought to go but must not be cut. */
  readonly refused: readonly RefusedMetal[];
  readonly boundMm: number;
  /** What is cut here, and over which part of the depth the clearance asks for it. */
  readonly pieces: readonly CutPiece[];
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

export interface RefusedMetal {
  readonly doNotCut: string;
  readonly areaMm2: number;
  readonly at: Depth['at'];
}

/** What the cuts of a section depend on beside what is needed. */
export interface CutConditions {
  readonly section: Section;
  readonly doNotCut: readonly DoNotCut[];
  /** Other sections of the casting that are not offered. */
  readonly notOffered: readonly Section[];
  /** Whether the edges of cuts are to be ones a grinder can follow. */
  readonly straight: boolean;
}

/**
 * The cuts of a section, band by band in order of depth, less what must not be cut: a band is split where a region that
 * must not be cut ends within it.
 */
export function* cutBands(
  conditions: CutConditions,
  pieces: readonly CutPiece[],
): Generator<Progress, readonly BandCut[]> {
  const metal = metalOf(conditions.section.loops, toleranceMm, 'outside');
  const cuts: BandCut[] = [];
  const slices = slicesOf(pieces);
  for (const slice of slices) {
    const progress = { step: `${conditions.section.id}, what is left`, done: cuts.length, of: slices.length };
    cuts.push(...(yield* showing(progress, sliceCuts(conditions, metal, slice))));
  }
  return cuts.filter(({ planned, refused }) => planned.length > 0 || refused.length > 0);
}

function* sliceCuts(conditions: CutConditions, metal: Polygons, slice: Slice): Generator<void, BandCut[]> {
  const { depth, pieces } = slice;
  const all = (of: (piece: CutPiece) => Polygons): Polygons =>
    pieces.length === 1 ? of(pieces[0] as CutPiece) : union(pieces.flatMap(of));
  const shaped = {
    planned: all(({ planned }) => planned),
    first: all(({ first }) => first),
    last: all(({ last }) => last),
  };
  yield;
  const { lines, extra, straight } = straightLines(conditions, metal, slice, shaped);
  const inTheWay = conditions.doNotCut.filter(
    (region) => sharesDepth(region.depth, depth) && biteOf(lines.planned, region.loops) !== null,
  );
  const needs = pieces.filter(({ needed }) => needed !== null || depth === null).map(({ need }) => need);
  const shared = {
    pieces,
    neededMm2: areaMm2(union(needs.flatMap(({ needed }) => needed))),
    way: wayOf(pieces),
    narrow: needs.flatMap(({ narrow }) => narrow),
  };
  const bounds = pieces.map(({ need }) => need.boundMm);
  const boundMm = Math.max(...bounds) + (straight === null ? 0 : straightBoundMm);
  const cuts: BandCut[] = [];
  for (const range of depthsParted(depth, inTheWay)) {
    yield;
    const refused = inTheWay.filter((region) => sharesDepth(region.depth, range));
    cuts.push({
      ...(yield* bandCut(metal, range, lines, refused, boundMm)),
      ...shared,
      lastDepth: lastDepthOf(conditions.section, range, pieces),
      neededMm3: neededMm3(pieces, range),
      straight: straight && { ...straight, extraMm2: areaMm2(withoutRefused(extra, refused)) },
    });
  }
  return cuts;
}

/** Ends within the section may come to lie farther by the error of what passes; its own ends are where it ends. */
function lastDepthOf(section: Section, range: DepthRange | null, pieces: readonly CutPiece[]): DepthRange | null {
  if (range === null || section.depth === null) return range;
  const byMm = Math.max(...pieces.map(({ need }) => need.depthErrorMm));
  return {
    fromMm: Math.max(section.depth.fromMm, range.fromMm - byMm),
    toMm: Math.min(section.depth.toMm, range.toMm + byMm),
  };
}

interface Lines {
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
}

/** Lines with an edge a grinder can follow, where one is asked for: what that adds bites nothing that must not be cut. */
function straightLines(
  conditions: CutConditions,
  metal: Polygons,
  { depth, pieces }: Slice,
  lines: Lines,
): { lines: Lines; extra: Polygons; straight: Omit<StraightBand, 'extraMm2'> | null } {
  if (!conditions.straight) return { lines, extra: [], straight: null };
  const keep = [...conditions.doNotCut, ...conditions.notOffered]
    .filter((region) => sharesDepth(region.depth, depth) && biteOf(lines.planned, region.loops) === null)
    .map(({ loops }) => metalOf(loops, toleranceMm, 'outside'));
  const radiusMm = Math.min(...pieces.map(({ need }) => need.discMm));
  const { cut: planned, asItWas } = straightened(metal, lines.planned, keep, radiusMm);
  const extra = difference(planned, lines.planned);
  const errorMm = Math.max(...pieces.map(({ need }) => need.errorMm));
  const last = union([...lines.last, ...intersection(metal, movedBy(extra, errorMm))]);
  return { lines: { ...lines, planned, last }, extra, straight: { radiusMm, asItWas } };
}

const wayOf = (pieces: readonly CutPiece[]): CutterWay | null =>
  pieces.map(({ need }) => need.way).find((way) => way !== 'as-needed') ?? pieces[0]?.need.way ?? null;

/** The volume the clearance alone takes of a range of depth. */
function neededMm3(pieces: readonly CutPiece[], range: DepthRange | null): number | null {
  if (range === null) return null;
  return pieces.reduce((sum, { need, needed }) => {
    const { fromMm, toMm } = (needed && commonDepth(needed, range)) ?? { fromMm: 0, toMm: 0 };
    return sum + areaMm2(need.needed) * (toMm - fromMm);
  }, 0);
}

type PlainCut = Omit<BandCut, 'pieces' | 'lastDepth' | 'neededMm2' | 'neededMm3' | 'way' | 'narrow' | 'straight'>;

function* bandCut(
  metal: Polygons,
  depth: DepthRange | null,
  lines: Lines,
  refused: readonly DoNotCut[],
  boundMm: number,
): Generator<void, PlainCut> {
  const allowed = (polygons: Polygons): Polygons => withoutRefused(polygons, refused);
  const planned = soundPolygons(allowed(lines.planned), 'outside');
  yield;
  const left = soundPolygons(metalLeft(metal, planned.polygons), 'outside').polygons;
  yield;
  const polygons = {
    planned: planned.polygons,
    first: soundPolygons(intersection(allowed(lines.first), planned.polygons), 'inside').polygons,
    last: soundPolygons(union([...allowed(lines.last), ...planned.polygons]), 'outside').polygons,
  };
  yield;
  const told = cutLines(polygons);
  yield;
  return {
    depth,
    ...polygons,
    lines: told,
    left,
    takeOff: deepest(planned.polygons, buildOutlineTree(loopsOf(left)), buildOutlineTree(loopsOf(metal))),
    refused: refused.flatMap((region) => {
      const bite = biteOf(lines.planned, region.loops);
      return bite === null ? [] : [{ doNotCut: region.id, ...bite }];
    }),
    boundMm: boundMm + planned.boundMm + told.boundMm + 3 * engineErrorMm,
  };
}

function withoutRefused(polygons: Polygons, refused: readonly DoNotCut[]): Polygons {
  return refused.length === 0 ? polygons : difference(polygons, union(refused.flatMap(keptClear)));
}

const known = remembered<Polygons>(1);

/** Kept clear by as much as arcs come beyond polygons, so that no line that is given out enters what must not be cut. */
const keptClear = ({ loops }: DoNotCut): Polygons =>
  known(loops, '', () => offset(metalOnLeft(loops), arcsWithinMm, toleranceMm, 'outside').polygons);
