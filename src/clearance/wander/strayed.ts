import { isMotionless, type Motion, partOfMotion } from '../../geometry/motion/motion.ts';
import { boxAroundEdges } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion, type Region } from '../../geometry/plane/loop.ts';
import { compose, type Rigid, rigid, rotationAbout } from '../../geometry/plane/rigid.ts';
import type { DepthRange } from '../../job/casting.ts';
import type { Leg } from '../../job/path.ts';
import type { Wander } from '../../job/wander.ts';
import {
  type DepthRule,
  type DepthView,
  fractionsWithin,
  isStretch,
  type MaybeStretch,
  reachOf,
  sharedStandOffs,
} from '../shared-depth.ts';
import { flushMm } from '../tolerances.ts';

/** How far moving metal reaches from its axis, and from its mating face, mm; without end where that is not known. */
export interface Lever {
  readonly reachMm: number;
  readonly depthMm: number;
}

/** How a pair may pass while one strays from a leg: over this motion, and nearer by so much than that comes. */
export interface Strayed {
  readonly start: Rigid;
  readonly motion: Motion;
  readonly nearerMm: number;
}

/** What straying goes by, beside the pair. */
export interface StrayRule {
  readonly wander: Wander;
  readonly depth: DepthRule;
  /** The stand-off below which the dowels guide it, and nothing strays. */
  readonly guidedMm: number;
}

export function leverOf(loops: Region, depth: DepthRange | null): Lever {
  const { minX, minY, maxX, maxY } = boxAroundEdges(edgesOfRegion(loops));
  return {
    reachMm: loops.length === 0 ? 0 : Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY)),
    depthMm: farthestDepthMm(depth),
  };
}

const farthestDepthMm = (depth: DepthRange | null): number =>
  depth === null ? Number.POSITIVE_INFINITY : Math.max(Math.abs(depth.fromMm), Math.abs(depth.toMm));

/**
 * The lever of metal that may stand anywhere, as far as it matters: rocked by τ a point of depth d that then stands ρ from
 * the axis was no farther from it than (ρ + d·sin τ)/cos τ.
 */
export function untracedLever(depth: DepthRange | null, withinMm: number, tiltRad: number): Lever {
  const depthMm = farthestDepthMm(depth);
  return { depthMm, reachMm: tiltRad === 0 ? withinMm : (withinMm + depthMm * Math.sin(tiltRad)) / Math.cos(tiltRad) };
}

/**
 * How a pair may pass on a leg; null where, however one strays, it shares no depth off the dowels. Stand-off and a turn
 * about the axis are exact, since the pair is met at all turns of the stretch on which it may share depth; where the axis
 * itself moves, a turn astray counts as far as it carries the reach, 2·r·sin(½δ). A point at depth d and reach r that is
 * rocked by τ moves by d·sin τ + r·(1 − cos τ) in the plane and by r·sin τ along the crank. All of it is on the safe side.
 */
export function strayedOn(
  fixed: MaybeStretch,
  moving: MaybeStretch,
  { reachMm, depthMm }: Lever,
  leg: Leg,
  { wander, depth, guidedMm }: StrayRule,
  view: DepthView,
): Strayed | null {
  const { turnRad, standOffMm, shiftMm, tiltRad } = wander;
  const isTilted = tiltRad !== 0;
  const rockedMm = isTilted ? reachMm * Math.sin(tiltRad) : 0;
  const shared =
    isStretch(fixed) && isStretch(moving)
      ? sharedStandOffs(fixed.depth, reachOf(moving, fixed, depth, view))
      : { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY };
  // where it stands, off the dowels, when rocked it may share depth with the other; mating faces meet as they are to
  const [fromMm, toMm] = [shared.fromMm - rockedMm, shared.toMm + (doMate(fixed, moving, depth) ? 0 : rockedMm)];
  if (Math.max(fromMm, guidedMm) >= toMm) return null;
  // level with the ends of the dowels nothing guides it yet
  const range = { fromMm: Math.max(fromMm, guidedMm - 2 * flushMm) - standOffMm, toMm: toMm + standOffMm };
  const fractions = fractionsWithin(range, leg);
  if (fractions === null) return null;
  const { from, to } = fractions;
  const placed = partOfMotion(rigid(leg.from.turnRad, leg.from.shift), leg.motion, from, to);
  const deepMm = depthMm + (view === 'at-worst' ? moving.depthErrorMm : 0);
  const asideMm = shiftMm + (isTilted ? deepMm * Math.sin(tiltRad) + reachMm * (1 - Math.cos(tiltRad)) : 0);
  if (turnRad === 0) return { ...placed, nearerMm: asideMm };
  return turnsAboutAxis(placed.start, placed.motion)
    ? { ...turnedFarther(placed.start, placed.motion, turnRad), nearerMm: asideMm }
    : { ...placed, nearerMm: asideMm + 2 * reachMm * Math.sin(turnRad / 2) };
}

/** Whether the ends that face one another are mating faces, which come together. */
const doMate = (fixed: MaybeStretch, moving: MaybeStretch, { facesMate }: DepthRule): boolean =>
  facesMate && fixed.whole?.fromMm === 0 && moving.whole?.fromMm === 0;

/** The part of a wander on a leg in which straying is told exactly: without tilt, and without turn where the axis moves. */
export const exactPart = (wander: Wander, { from, motion }: Leg): Wander => ({
  ...wander,
  tiltRad: 0,
  turnRad: turnsAboutAxis(rigid(from.turnRad, from.shift), motion) ? wander.turnRad : 0,
});

/** Whether the axis of the moving part stays where it is. */
function turnsAboutAxis({ shift }: Rigid, motion: Motion): boolean {
  if (isMotionless(motion)) return true;
  return motion.kind === 'turn' && motion.pole.x === shift.x && motion.pole.y === shift.y;
}

/** A turn about the axis, or none, begun earlier and ended later by so much. */
function turnedFarther(
  start: Rigid,
  motion: Motion,
  byRad: number,
): { readonly start: Rigid; readonly motion: Motion } {
  const angleRad = motion.kind === 'turn' ? motion.angleRad : 0;
  const outRad = angleRad < 0 ? -byRad : byRad;
  return {
    start: compose(rotationAbout(start.shift, -outRad), start),
    motion: { kind: 'turn', pole: start.shift, angleRad: angleRad + 2 * outRad },
  };
}
