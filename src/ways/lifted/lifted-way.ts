import { checkJoint } from '../../clearance/check.ts';
import type { CheckResult } from '../../clearance/check-result.ts';
import { passageOf } from '../../clearance/passages.ts';
import { heldToMm } from '../../clearance/tolerances.ts';
import type { Motion } from '../../geometry/motion/motion.ts';
import { rigid } from '../../geometry/plane/rigid.ts';
import { scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Progress } from '../../geometry/progress.ts';
import { legsThrough, type Position } from '../../job/path.ts';
import type { Joint } from '../../joint/joint.ts';
import type { Nearness } from '../blocked-turns.ts';
import { type Reached, type RouteStep, reachedFrom, routeTo, stepsOf } from '../route.ts';
import type { Strip } from '../strips.ts';
import { type FreeTurns, freeTurns } from '../turn-map.ts';
import { common, contains, type TurnRange, widthRad } from '../turns.ts';
import { alongLegs, mmSteps, plain, radSteps, type WayPoint, wayAlong } from '../way-along.ts';
import { type Lift, shiftsOf } from './lift-grid.ts';

/** A way on which the part comes in carried aside, goes over onto the axis, and home along it. */
export interface LiftedWay {
  readonly shift: Vec;
  readonly positions: readonly Position[];
}

/** With how it was checked: home, what runs round and the wander of the fit count there. */
export interface CheckedLift extends LiftedWay {
  readonly check: CheckResult;
}

/** The free turns with the part carried aside by a shift, and which of them can be come to from far out. */
export interface AsideMap {
  readonly free: FreeTurns;
  readonly fromFar: Reached;
}

/** What is asked of the ways about the axis. */
interface OnAxis {
  readonly joint: Joint;
  readonly strips: readonly Strip[];
  readonly near: Nearness;
  readonly asked: TurnRange;
}

/** What every search among lifts looks at. */
export interface LiftSearch extends OnAxis {
  readonly shifts: readonly Vec[];
  /** The map of a shift, made when it is first asked for. */
  readonly mapAt: (shift: Vec) => AsideMap;
}

export function liftSearch(onAxis: OnAxis, lift: Lift): LiftSearch {
  const { strips, near, asked } = onAxis;
  const known = new Map<Vec, AsideMap>();
  const mapAt = (shift: Vec): AsideMap => {
    const before = known.get(shift);
    if (before !== undefined) return before;
    const free = freeTurns(strips, near, asked, 'untraced-too', shift);
    const made = { free, fromFar: reachedFrom(stepsOf(free, strips.length - 1), free) };
    known.set(shift, made);
    return made;
  };
  return { ...onAxis, shifts: shiftsOf(lift), mapAt };
}

/**
 * A way without cutting with the part carried aside at first; null where the grid of shifts shows none. At a constant
 * shift the map of turns is that about an axis moved by it, and as exact; from there onto the axis it slides at one turn
 * and stand-off, which the kernel proves. Between the places of the grid, and of the turns tried for that slide, nothing
 * is looked at: that none is found says nothing of others.
 */
export function* liftedWay(search: LiftSearch): Generator<Progress, CheckedLift | null> {
  const { joint, strips, near, asked, shifts, mapAt } = search;
  const onAxis = freeTurns(strips, near, asked, 'untraced-too');
  const home = stepsOf(onAxis, 0).filter(({ range }) => contains(range, 0));
  const fromHome = reachedFrom(home, onAxis);
  for (const [done, shift] of shifts.entries()) {
    yield { step: 'lifted aside', done, of: shifts.length };
    const { fromFar } = mapAt(shift);
    for (const { inAside, inAxis, over } of crossings(search, mapAt(shift), onAxis, fromHome, shift)) {
      const begins = liftedPart(routeTo(inAside, fromFar), strips, shift, over);
      const ends = routeTo(inAxis, fromHome).toReversed();
      const inward = wayAlong(narrowed(ends, over.turnRad), strips, over.standOffMm);
      const positions = [...begins, ...inward.map(onTheAxis)];
      const legs = legsThrough(positions);
      if (legs === null) continue;
      const check = yield* checkJoint(alongLegs(joint, legs));
      if (check.meetsClearance) return { shift, positions, check };
    }
  }
  return null;
}

/** The part of a way that is gone carried aside, to where it goes over onto the axis. */
export const liftedPart = (
  route: readonly RouteStep[],
  strips: readonly Strip[],
  shift: Vec,
  over: WayPoint,
): Position[] => wayAlong(route, strips, undefined, over).map((point) => ({ ...point, shift }));

export const onTheAxis = (point: WayPoint): Position => ({ ...point, shift: vec(0, 0) });

interface Crossing {
  /** The free ranges it goes over between, and where. */
  readonly inAside: TurnRange;
  readonly inAxis: TurnRange;
  readonly over: WayPoint;
}

/** Where it could go over from a shift onto the axis, and on from there home; the farthest out first. */
function* crossings(
  { joint, strips, near }: LiftSearch,
  { free: aside, fromFar }: AsideMap,
  onAxis: FreeTurns,
  fromHome: Reached,
  shift: Vec,
): Generator<Crossing> {
  for (const [i, strip] of [...strips.entries()].toReversed()) {
    const standOffMm = overAt(joint, strip);
    if (standOffMm === null) continue;
    for (const inAside of (aside[i] ?? []).filter((range) => fromFar.has(range))) {
      for (const inAxis of (onAxis[i] ?? []).filter((range) => fromHome.has(range))) {
        const both = common(inAside, inAxis);
        const turnRad = both && turnsIn(both).find((turn) => slidesOver(strip, near, turn, shift));
        if (typeof turnRad === 'number') yield { inAside, inAxis, over: { turnRad, standOffMm } };
      }
    }
  }
}

/** The stand-off at which it goes over within a strip, not before the shaft has engaged nor on the dowels; null where it has. */
function overAt({ fit }: Joint, { fromMm, toMm, onDowels }: Strip): number | null {
  const leastMm = Math.max(fromMm, fit.engagesAtMm ?? 0);
  return onDowels || leastMm > toMm ? null : plain((leastMm + toMm) / 2, leastMm, toMm, mmSteps);
}

/** Turns tried of a range: the one nearest to home's, then its middle, then a quarter from either end. */
const turnsIn = (range: TurnRange): number[] => {
  const { fromRad, toRad } = range;
  const at = (share: number): number => plain(fromRad + share * widthRad(range), fromRad, toRad, radSteps);
  return [Math.max(fromRad, Math.min(toRad, 0)), at(0.5), at(0.25), at(0.75)];
};

/** Whether it keeps the clearance while it slides from a shift onto the axis, at a turn, anywhere within a strip. */
export function slidesOver({ pairs }: Strip, { clearanceMm }: Nearness, turnRad: number, shift: Vec): boolean {
  const over: Motion = { kind: 'slide', by: scale(shift, -1) };
  return pairs.every(({ fixed, moving, ownMm }) => {
    const { state, distanceMm } = passageOf(fixed.solid.tree, moving.solid.tree, rigid(turnRad, shift), over);
    return state !== 'fouls' && (distanceMm === null || distanceMm >= (ownMm ?? clearanceMm) - heldToMm);
  });
}

/** A route that begins at a turn of its first range. */
const narrowed = ([first, ...rest]: readonly RouteStep[], turnRad: number): RouteStep[] =>
  first === undefined ? [] : [{ ...first, range: { fromRad: turnRad, toRad: turnRad } }, ...rest];
