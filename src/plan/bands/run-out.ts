import { metalLeft } from '../../geometry/cutting/metal-left.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection, union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { boxRound, rectangle, solidNear } from '../../geometry/polygons/solid-near.ts';
import type { DepthRange, DoNotCut, Section } from '../../job/casting.ts';
import type { Cutter } from '../../job/job.ts';
import { biteOf, thickPieces } from '../cutter/bite.ts';
import { distanceToGuard, treeOfLine } from '../walls/guard-distance.ts';
import type { Guard } from '../walls/guards.ts';
import type { BandNeed } from './band-need.ts';
import { commonDepth, contains, gapMm, rangesBetween } from './depth-ranges.ts';
import { metalOf } from './metal.ts';
import { toleranceMm } from './tolerance.ts';

/** What a need takes off a section over one range of depth. */
export interface CutPiece {
  readonly need: BandNeed;
  readonly depth: DepthRange | null;
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
  /** The part of that range where the clearance asks for it; null where only the cutter's run-out does. */
  readonly needed: DepthRange | null;
  readonly isOwn: boolean;
}

/** A range of a section's depth and all that is cut there. */
export interface Slice {
  readonly depth: DepthRange | null;
  readonly pieces: readonly CutPiece[];
}

/** What a run-out must keep out of. */
export interface KeepOut {
  readonly sections: readonly Section[];
  readonly doNotCut: readonly DoNotCut[];
  readonly guards: readonly Guard[];
  readonly handErrorMm: number;
}

/** How far a cut goes past the ends of what is needed, so that no fillet of a ball nose stands there, mm. */
export const pastMm = (cutter: Cutter | null): number =>
  cutter?.nose === 'ball' && cutter.runOut === 'cut-past' ? cutter.radiusMm : 0;

/**
 * What needs take off a section: its own, cut past their ends as far as the section goes, and what the run-out of cuts in
 * other sections takes from it. A run-out is no need: where something must stay it keeps out.
 */
export function piecesOf(
  section: Section,
  own: readonly BandNeed[],
  others: readonly BandNeed[],
  keepOut: KeepOut,
  cutter: Cutter | null,
): CutPiece[] {
  const byMm = pastMm(cutter);
  const ofOthers = cutter === null ? [] : others.flatMap((need) => foreignPiece(section, need, keepOut, byMm));
  const pieces = [...own.flatMap((need) => ownPieces(section, need, keepOut, byMm)), ...ofOthers];
  // what is needed is shaped for the cutter already, a run-out only takes what a round one gets at
  return pieces.flatMap((piece) => {
    if (cutter === null || piece.needed !== null || (piece.isOwn && piece.depth === null)) return [piece];
    const planned = gotAt(piece.planned, metalOf(section.loops, toleranceMm, 'outside'), cutter.radiusMm);
    return planned.length === 0 ? [] : [{ ...piece, planned }];
  });
}

/** What of a region, cut from some metal, discs of a radius get at that keep clear of the metal left. */
function gotAt(region: Polygons, metal: Polygons, radiusMm: number): Polygons {
  const box = boxRound(region, 2.1 * radiusMm);
  const open = difference([rectangle(box)], metalLeft(solidNear(metal, box), region));
  const free = offset(outlinesOf(open), -radiusMm, toleranceMm, 'inside').polygons;
  return thickPieces(intersection(region, offset(outlinesOf(free), radiusMm, toleranceMm, 'inside').polygons));
}

function ownPieces(section: Section, need: BandNeed, keepOut: KeepOut, byMm: number): CutPiece[] {
  const { depth } = need;
  const lines = { planned: need.planned, first: need.first, last: need.last };
  if (depth === null || section.depth === null || byMm === 0)
    return [{ need, depth, ...lines, needed: depth, isOwn: true }];
  const past = [
    { fromMm: Math.max(section.depth.fromMm, depth.fromMm - byMm), toMm: depth.fromMm },
    { fromMm: depth.toMm, toMm: Math.min(section.depth.toMm, depth.toMm + byMm) },
  ].filter(({ fromMm, toMm }) => toMm - fromMm > leastMm);
  const runOuts = past.map((range) => ({ range, kept: keptOut(lines, need, range, keepOut) }));
  const free = runOuts.filter(({ kept }) => kept === null).map(({ range }) => range);
  const whole = {
    fromMm: Math.min(depth.fromMm, ...free.map(({ fromMm }) => fromMm)),
    toMm: Math.max(depth.toMm, ...free.map(({ toMm }) => toMm)),
  };
  return [
    { need, depth: whole, ...lines, needed: depth, isOwn: true },
    ...runOuts.flatMap(({ range, kept }) =>
      kept === null || kept.planned.length === 0 ? [] : [{ need, depth: range, ...kept, needed: null, isOwn: true }],
    ),
  ];
}

/** Ranges of depth shorter than this are none, mm. */
const leastMm = 1e-6;

/** What the run-out of another section's cut takes of this one, and what the two have of the same metal. */
function foreignPiece(section: Section, need: BandNeed, keepOut: KeepOut, byMm: number): CutPiece[] {
  const reach = need.depth && { fromMm: need.depth.fromMm - byMm, toMm: need.depth.toMm + byMm };
  const depth = reach === null || section.depth === null ? (reach ?? section.depth) : commonDepth(reach, section.depth);
  if (depth === null && (reach !== null || section.depth !== null)) return [];
  const bite = biteOf(need.planned, section.loops);
  if (bite === null) return [];
  const metal = metalOf(section.loops, toleranceMm, 'outside');
  const here = (line: Polygons): Polygons => thickPieces(intersection(line, metal));
  const lines = { planned: here(need.planned), first: here(need.first), last: here(need.last) };
  const kept = keptOut(lines, need, depth, keepOut) ?? lines;
  return kept.planned.length === 0 ? [] : [{ need, depth, ...kept, needed: null, isOwn: false }];
}

type Lines = Pick<CutPiece, 'planned' | 'first' | 'last'>;

/** Lines without all that a run-out over a range of depth must keep out of; null where it meets nothing. */
function keptOut(lines: Lines, need: BandNeed, range: DepthRange | null, keepOut: KeepOut): Lines | null {
  const meets = (depth: DepthRange | null): boolean => gapMm(depth, range) === 0 && !endToEnd(depth, range);
  const solids = [...keepOut.sections.filter((other) => other !== need.section), ...keepOut.doNotCut]
    .filter(({ depth }) => meets(depth))
    .map(({ loops }) => metalOf(loops, toleranceMm, 'outside'));
  const [atWorst, planned] = [0, need.errorMm].map((errorMm) => [
    ...solids,
    ...keepOut.guards.flatMap((guard) => roomKept(guard, need, range, keepOut.handErrorMm + errorMm)),
  ]) as [Polygons[], Polygons[]];
  if (planned.every((room) => areaMm2(intersection(lines.planned, room)) < grazeMm2)) return null;
  const [past, room] = [union(atWorst.flat()), union(planned.flat())];
  return {
    planned: thickPieces(difference(lines.planned, room)),
    first: thickPieces(difference(lines.first, room)),
    last: thickPieces(difference(lines.last, past)),
  };
}

const grazeMm = 1e-3;

/** Less than this of what must stay, mm², is where it only touches. */
const grazeMm2 = 1e-4;

const endToEnd = (a: DepthRange | null, b: DepthRange | null): boolean =>
  a !== null && b !== null && (a.fromMm >= b.toMm || b.fromMm >= a.toMm);

/**
 * A guarded hollow or hole with the wall to keep about it, in the plane, as far as that reaches over a range of depth.
 * Where what is needed leaves less, the run-out does no harm as long as it leaves as much.
 */
function roomKept(guard: Guard, need: BandNeed, range: DepthRange | null, errorMm: number): Polygons[] {
  const askedMm = (guard.keepMm ?? 0) + guard.traceErrorMm + errorMm;
  const keepMm = Math.min(askedMm, distanceToGuard(guard, need.depth, treeOfLine(need.planned)) - grazeMm);
  if (keepMm <= 0) return [];
  const alongMm = gapMm(guard.depth, range);
  if (alongMm >= keepMm) return [];
  const byMm = Math.sqrt(keepMm * keepMm - alongMm * alongMm);
  // no more of it than can come near any of the lines
  const near = solidNear(
    metalOf(guard.loops, toleranceMm, 'outside'),
    boxRound([...need.planned, ...need.first, ...need.last], 2 * byMm + grazeMm),
  );
  return [offset(outlinesOf(near), byMm, toleranceMm, 'outside').polygons];
}

/** The ranges of depth between the ends of pieces, each with the pieces that are cut there. */
export function slicesOf(pieces: readonly CutPiece[]): Slice[] {
  const ranged = pieces.flatMap((piece) => (piece.depth === null ? [] : [{ piece, depth: piece.depth }]));
  const through = pieces.filter(({ depth }) => depth === null);
  if (through.length > 0) return [{ depth: null, pieces }];
  return rangesBetween(ranged.flatMap(({ depth }) => [depth.fromMm, depth.toMm]))
    .map(
      (depth): Slice => ({
        depth,
        pieces: ranged.filter((one) => contains(one.depth, depth)).map(({ piece }) => piece),
      }),
    )
    .filter((slice) => slice.pieces.length > 0);
}

/**
 * How far along a surface the fillet of a ball reaches that has cut `depthMm` below it: half the width of its groove,
 * √(2Rh − h²), and its radius at the most; mm.
 */
export const filletReachMm = (radiusMm: number, depthMm: number): number =>
  depthMm >= radiusMm ? radiusMm : Math.sqrt(2 * radiusMm * depthMm - depthMm * depthMm);

/** The height of the ridges between passes of a ball, R − √(R² − s²/4); its radius where the passes part. */
export const scallopMm = (radiusMm: number, stepoverMm: number): number =>
  stepoverMm >= 2 * radiusMm ? radiusMm : radiusMm - Math.sqrt(radiusMm * radiusMm - (stepoverMm * stepoverMm) / 4);

/** The metal a round cutter leaves in a corner of `cornerRad` between two straight walls, r(1/sin ½θ − 1); mm. */
export const cornerLeftMm = (radiusMm: number, cornerRad: number): number =>
  radiusMm * (1 / Math.sin(cornerRad / 2) - 1);
