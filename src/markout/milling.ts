import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../geometry/motion/outline-tree.ts';
import { bulgeOf, type Edge, edgeOfBulge } from '../geometry/plane/edge.ts';
import { apply, type Rigid, rigid, rotate } from '../geometry/plane/rigid.ts';
import { angleOf, distance, lerp, scale, sub, type Vec } from '../geometry/plane/vec.ts';
import { edgesThrough } from '../geometry/polygons/arcs-of-run.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { loopsOf, outlinesOf, type Polygon } from '../geometry/polygons/polygons.ts';
import type { Hole } from '../job/casting.ts';
import type { Cutter } from '../job/job.ts';
import { arcsWithinMm, toleranceMm } from '../plan/bands/tolerance.ts';
import { measured, pointAlong } from './marking-out-along.ts';
import type { Bench, BenchBand } from './marking-out-bench.ts';
import { lengthOf, partedRound } from './marking-out-edges.ts';
import { metalWithin } from './marking-out-plate.ts';

/** What is set up from: X = 0, Y = 0 in the middle of one hole, X growing toward the other. */
export interface Datum {
  readonly origin: Hole;
  readonly along: Hole;
  /** Carries the bench to the table of the machine. */
  readonly place: Rigid;
}

/** Lines for the middle of the cutter at some depths of its tip, that finish the edge of one band; on the bench, mm. */
export interface MillPass {
  readonly band: BenchBand;
  /** From the face, in order. */
  readonly tipsMm: readonly number[];
  readonly lines: readonly (readonly Edge[])[];
  /** Whether metal that stays keeps the cutter off part of the edge. */
  readonly isKeptOff: boolean;
}

export interface Milling {
  readonly datum: Datum;
  readonly cutter: Cutter;
  readonly passes: readonly MillPass[];
}

/** More steps than this are not worked out one by one. */
const mostSteps = 200;
/** What the middle of a cutter may miss its radius by and still finish the edge, mm. */
const missMm = 2e-3;
/** Shorter lines are specks, mm. */
const leastMm = 0.2;

/**
 * Where the middle of the cutter goes that finishes a cut, its axis along the crank and its tip toward the part: at its
 * radius from the metal that stays at every depth down to its tip. A ball goes down by its stepover, a flat nose to the end
 * of the cut at once.
 */
export function millingOf(bench: Bench): Milling | { readonly why: string } {
  const { cutter } = bench.joint.fit;
  if (cutter === null) return { why: 'the fit names no cutter' };
  if (bench.mirrored) return { why: 'a machine cuts the casting as it is, not its mirror image' };
  if (bench.holes === null) return { why: 'there are no two holes to set it up by' };
  const passes = bench.bands.flatMap((band) => passesOf(bench, band, cutter)).filter(({ lines }) => lines.length > 0);
  if (passes.length === 0) return { why: 'no edge of the cut is free for a cutter that comes from the face' };
  return { datum: datumOf(bench.holes), cutter, passes };
}

function datumOf([origin, along]: readonly [Hole, Hole]): Datum {
  const turn = rigid(-angleOf(sub(along.at, origin.at)), { x: 0, y: 0 });
  return { origin, along, place: { ...turn, shift: scale(rotate(turn, origin.at), -1) } };
}

/** The passes of a band; depths with the same metal beside the cutter are one. */
function passesOf({ after }: Bench, band: BenchBand, cutter: Cutter): MillPass[] {
  if (band.depth === null || band.edges.cuts.length === 0) return [];
  const groups = new Map<string, { tips: number[]; first: number }>();
  for (const tipMm of tipsOf(band.depth.fromMm, band.depth.toMm, cutter)) {
    const beside = after.sections.flatMap(({ depth }, i) => (depth === null || depth.fromMm < tipMm ? [i] : []));
    const group = groups.get(beside.join()) ?? { tips: [], first: tipMm };
    group.tips.push(tipMm);
    groups.set(beside.join(), group);
  }
  return [...groups.values()].map(({ tips, first }) => {
    const stays = metalWithin(after, { fromMm: Number.NEGATIVE_INFINITY, toMm: first });
    const paths = offset(outlinesOf(stays), cutter.radiusMm, toleranceMm, 'outside').polygons;
    const runs = paths.flatMap((path) => finishing(path, band, cutter.radiusMm));
    const lines = runs.map((points) => withoutTails(edgesThrough(points, arcsWithinMm)));
    return { band, tipsMm: tips, lines, isKeptOff: isKeptOff(runs, band, cutter.radiusMm) };
  });
}

function tipsOf(fromMm: number, toMm: number, { nose, stepoverMm }: Cutter): number[] {
  const steps = nose === 'ball' && stepoverMm !== null ? Math.ceil((toMm - fromMm) / stepoverMm - 1e-9) : 1;
  if (steps > mostSteps || stepoverMm === null) return [toMm];
  return Array.from({ length: steps }, (_, i) => (i + 1 === steps ? toMm : fromMm + (i + 1) * stepoverMm));
}

/** The stretches of a path of the cutter's middle on which it touches the planned edge. */
function finishing(path: Polygon, { edges }: BenchBand, radiusMm: number): (readonly Vec[])[] {
  const edge = thereAndBack(edges.cuts.map(({ points }) => points));
  const touches = (a: Vec, b: Vec): boolean =>
    [0, 0.5, 1].every((t) => nearestOnOutline(edge, lerp(a, b, t)).distanceMm <= radiusMm + missMm);
  return partedRound(path, touches)
    .filter(({ points, holds }) => holds && lengthOf(points) > leastMm)
    .map(({ points }) => points);
}

/** Shorter straight ends of a line are where it leaves the edge on a tangent, mm. */
const tailMm = 0.2;

function withoutTails(edges: readonly Edge[]): readonly Edge[] {
  const isTail = (edge: Edge | undefined): boolean => edge?.kind === 'line' && distance(edge.a, edge.b) < tailMm;
  let [from, to] = [0, edges.length];
  while (to - from > 1 && isTail(edges[from])) from++;
  while (to - from > 1 && isTail(edges[to - 1])) to--;
  return edges.slice(from, to);
}

/** From place to place of an edge that is looked at, mm. */
const lookMm = 0.5;
/** An edge farther than this from where the cutter gets to is not finished, mm. */
const unfinishedMm = 0.01;

/** Whether the cutter, along its lines, comes nowhere near some of the planned edge. */
function isKeptOff(runs: readonly (readonly Vec[])[], { edges }: BenchBand, radiusMm: number): boolean {
  const lines = thereAndBack(runs);
  const isLeft = (p: Vec): boolean => nearestOnOutline(lines, p).distanceMm > radiusMm + unfinishedMm;
  return edges.cuts.map(measured).some((run) => {
    const looks = Math.ceil(run.lengthMm / lookMm);
    return Array.from({ length: looks + 1 }, (_, i) => pointAlong(run, (run.lengthMm * i) / looks)).some(isLeft);
  });
}

/** Open lines as outlines without an inside. */
const thereAndBack = (runs: readonly (readonly Vec[])[]): OutlineTree =>
  buildOutlineTree(loopsOf(runs.map((points) => [...points, ...points.slice(1, -1).toReversed()])));

/** An edge as it lies on the table of the machine. */
export function onTable(edge: Edge, { place }: Datum): Edge {
  const [a, b] = [apply(place, edge.a), apply(place, edge.b)];
  return edgeOfBulge(a, b, bulgeOf(edge));
}
