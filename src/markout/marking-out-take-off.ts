import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import type { OutlineTree } from '../geometry/motion/outline-tree.ts';
import { rayCrossings } from '../geometry/motion/ray-crossings.ts';
import { add, distance, dot, leftOf, scale, sub, type Vec } from '../geometry/plane/vec.ts';
import { type MeasuredRun, pointAlong } from './marking-out-along.ts';

/** Trees of the three lines of a band, in straight edges. */
export interface BandTrees {
  readonly first: OutlineTree;
  readonly planned: OutlineTree;
  readonly last: OutlineTree;
}

/** What comes off at a place to each of the three lines, mm. */
export interface TakeOff {
  readonly firstMm: number;
  readonly plannedMm: number;
  readonly lastMm: number;
  /** Where the last line is. */
  readonly lastAt: Vec;
}

/** At the end of an edge, where nothing comes off, the way in is that of a place this far along it, mm. */
const lookMm = 0.05;
/** How far lines may miss one another and still be one, mm. */
const slackMm = 1e-3;
/** The cosine under which the nearest outside lies to the side of an edge rather than in front of it. */
const sideways = 0.5;

/**
 * What comes off at a place on the planned edge, square to the present outside that is nearest to it: from there on
 * through the place to each line. Where that outside lies to the side, as a rib's flank does when its end comes off, it
 * is measured square to the edge; were that deeper than `deepestMm`, only the lines' distances from it are.
 */
export function takeOffAlong(
  run: MeasuredRun,
  alongMm: number,
  present: OutlineTree,
  lines: BandTrees,
  deepestMm: number | null,
): TakeOff {
  const at = pointAlong(run, alongMm);
  const { point: outside, distanceMm } = nearestOnOutline(present, at);
  const beside = justAlong(run, alongMm, present);
  const { point: from } = nearestOnOutline(present, beside);
  const inward = unit(sub(beside, from));
  const square = squareTo(run, alongMm);
  if (inward === null || dot(inward, square) < sideways)
    return squareToEdge(beside, square, distanceMm, lines, deepestMm);
  const lastMm = Math.max(distanceMm, throughTo(lines.last, outside, inward, distanceMm));
  const toFirst = rayCrossings(lines.first, outside, inward).filter((mm) => mm <= distanceMm + slackMm);
  return {
    firstMm: Math.max(0, ...toFirst),
    plannedMm: distanceMm,
    lastMm,
    lastAt: add(outside, scale(inward, lastMm)),
  };
}

/** What comes off at a place on an edge that takes off a whole tip: its length, square to the chord. */
export const tipOffAlong = (run: MeasuredRun, alongMm: number, present: OutlineTree, lines: BandTrees): TakeOff =>
  squareToEdge(justAlong(run, alongMm, present), squareToChord(run), 0, lines, null);

/** The length of its chord over that of an edge which still counts as straight across a rib. */
const straightAcross = 0.95;

/** Whether an edge runs straight across from flank to flank, so that all of the tip beyond it comes off. */
export function takesTip(run: MeasuredRun, present: OutlineTree): boolean {
  const { lengthMm, closed } = run;
  if (closed || distance(pointAlong(run, 0), pointAlong(run, lengthMm)) < straightAcross * lengthMm) return false;
  return [0, lengthMm].every((alongMm) => {
    const inside = pointAlong(run, Math.abs(alongMm - lookMm));
    const inward = unit(sub(inside, nearestOnOutline(present, inside).point));
    return inward !== null && Math.abs(dot(inward, squareTo(run, alongMm))) < sideways;
  });
}

function squareToEdge(at: Vec, inward: Vec, nearestMm: number, lines: BandTrees, deepestMm: number | null): TakeOff {
  const outward = scale(inward, -1);
  const depthMm = throughTo(lines.planned, at, outward, 0);
  const plannedMm = deepestMm !== null && depthMm > deepestMm + slackMm ? nearestMm : depthMm;
  const toFirst = rayCrossings(lines.first, at, outward);
  const pastMm = throughTo(lines.last, at, inward, 0);
  return {
    firstMm: toFirst.length === 0 ? 0 : Math.max(0, plannedMm - Math.min(...toFirst)),
    plannedMm,
    lastMm: plannedMm + pastMm,
    lastAt: add(at, scale(inward, pastMm)),
  };
}

/** The first place at or past `leastMm` where a region ends on a way through it; 0 where it does not reach there. */
export function throughTo(line: OutlineTree, from: Vec, along: Vec, leastMm: number): number {
  const past = rayCrossings(line, from, along).filter((mm) => mm > Math.max(leastMm - slackMm, slackMm));
  return past.length === 0 ? 0 : Math.min(...past);
}

/** The place itself or, where it lies on the outside, one just along the edge. */
function justAlong(run: MeasuredRun, alongMm: number, present: OutlineTree): Vec {
  const depthOf = (p: Vec): number => nearestOnOutline(present, p).distanceMm;
  const at = pointAlong(run, alongMm);
  if (depthOf(at) > lookMm / 2) return at;
  const [ahead, behind] = [pointAlong(run, alongMm + lookMm), pointAlong(run, alongMm - lookMm)];
  return depthOf(ahead) > depthOf(behind) ? ahead : behind;
}

/** The unit vector square to an edge, into the metal that stays. */
const squareTo = (run: MeasuredRun, alongMm: number): Vec =>
  scale(leftOf(pointAlong(run, alongMm - lookMm), pointAlong(run, alongMm + lookMm)), -1);

/** The same of the chord between its ends: along the rib that it goes across. */
const squareToChord = (run: MeasuredRun): Vec => scale(leftOf(pointAlong(run, 0), pointAlong(run, run.lengthMm)), -1);

function unit(v: Vec): Vec | null {
  const long = Math.hypot(v.x, v.y);
  return long === 0 ? null : scale(v, 1 / long);
}
