import { passageOf } from '../clearance/passages.ts';
import { boxAroundEdges } from '../geometry/plane/edge-box.ts';
import { edgesOfRegion } from '../geometry/plane/loop.ts';
import { identity, rigid } from '../geometry/plane/rigid.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { dowelsProudMm } from '../joint/path-notices.ts';
import { allPairs, type StripPair } from './strips.ts';

/** How far one may stray from a way while steering by hand, each way of each. */
export interface Wander {
  readonly turnRad: number;
  readonly standOffMm: number;
  /** Aside in the plane of the face, in any direction. */
  readonly shiftMm: number;
  /** Rocked about any line of the mating face through the crank axis. */
  readonly tiltRad: number;
}

export const noWander: Wander = { turnRad: 0, standOffMm: 0, shiftMm: 0, tiltRad: 0 };

const axis = vec(0, 0);

/**
 * The least clearance on every path that strays no farther from a way about the axis, mm; less than 0 where it may come to
 * touch by that much, null where nothing can meet. Exact for turn and stand-off, since a pair of sections is met at all
 * turns of the stretch on which it may share depth; never too much for the others. A point at depth d and reach r that is
 * rocked by τ moves by d·sin τ + r·(1 − cos τ) in the plane and by r·sin τ along the crank. Once it is on its dowels it is
 * guided: nothing strays there.
 */
export function wanderClearanceMm(joint: Joint, legs: readonly Leg[], wander: Wander): number | null {
  const proudMm = dowelsProudMm(joint.fit.dowels);
  const found = allPairs(joint).flatMap((pair) => [
    ...offDowels(pair, legs, wander, proudMm),
    ...onDowels(pair, legs, proudMm),
  ]);
  return found.length === 0 ? null : Math.min(...found);
}

function offDowels(pair: StripPair, legs: readonly Leg[], wander: Wander, proudMm: number): number[] {
  const { reachMm, depthMm } = leverOf(pair);
  const { turnRad, shiftMm, tiltRad } = wander;
  const isTilted = tiltRad !== 0;
  const inPlaneMm = shiftMm + (isTilted ? depthMm * Math.sin(tiltRad) + reachMm * (1 - Math.cos(tiltRad)) : 0);
  const rockedMm = isTilted ? reachMm * Math.sin(tiltRad) : 0;
  const range = pair.rangeMm ?? { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY };
  // where it stands, off the dowels, when rocked it may share depth with the other
  const [fromMm, toMm] = [Math.max(range.fromMm - rockedMm, proudMm), range.toMm + rockedMm];
  if (fromMm >= toMm) return [];
  return legs.flatMap((leg) => {
    const turns = turnsWithin(leg, fromMm - wander.standOffMm, toMm + wander.standOffMm);
    return turns === null
      ? []
      : [distanceMm(pair, turns[0] - turnRad, turns[1] + turnRad) - inPlaneMm - (pair.ownMm ?? 0)];
  });
}

function onDowels(pair: StripPair, legs: readonly Leg[], proudMm: number): number[] {
  const range = pair.rangeMm ?? { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY };
  const [fromMm, toMm] = [Math.max(range.fromMm, 0), Math.min(range.toMm, Math.max(proudMm, Number.MIN_VALUE))];
  if (fromMm >= toMm || legs.length === 0) return [];
  return [distanceMm(pair, 0, 0) - (pair.ownMm ?? 0)];
}

/** The turns of a leg while its stand-off lies within a range; null where it never does. */
function turnsWithin({ from, to }: Leg, fromMm: number, toMm: number): readonly [number, number] | null {
  const rise = to.standOffMm - from.standOffMm;
  if (rise === 0) {
    if (from.standOffMm < fromMm || from.standOffMm > toMm) return null;
    return [Math.min(from.turnRad, to.turnRad), Math.max(from.turnRad, to.turnRad)];
  }
  const [a, b] = [(fromMm - from.standOffMm) / rise, (toMm - from.standOffMm) / rise];
  const [start, end] = [Math.max(0, Math.min(a, b)), Math.min(1, Math.max(a, b))];
  if (start > end) return null;
  const turnAt = (at: number): number => from.turnRad + at * (to.turnRad - from.turnRad);
  return [Math.min(turnAt(start), turnAt(end)), Math.max(turnAt(start), turnAt(end))];
}

function distanceMm({ fixed, moving }: StripPair, fromRad: number, toRad: number): number {
  const turn = { kind: 'turn', pole: axis, angleRad: toRad - fromRad } as const;
  const start = fromRad === 0 ? identity : rigid(fromRad, axis);
  const { state, distanceMm, toleranceMm } = passageOf(fixed.solid.tree, moving.solid.tree, start, turn);
  return state === 'clear' ? (distanceMm ?? Number.POSITIVE_INFINITY) - toleranceMm : 0;
}

/** How far the moving metal of a pair reaches from the axis, and from its mating face; without end where that is not known. */
function leverOf({ moving: { solid, loops } }: StripPair): { reachMm: number; depthMm: number } {
  const { minX, minY, maxX, maxY } = boxAroundEdges(edgesOfRegion(loops));
  const reachMm = solid.untraced ? Number.POSITIVE_INFINITY : Math.hypot(Math.max(-minX, maxX), Math.max(-minY, maxY));
  const depth = solid.depth;
  const depthMm = depth === null ? Number.POSITIVE_INFINITY : Math.max(Math.abs(depth.fromMm), Math.abs(depth.toMm));
  return { reachMm, depthMm };
}

/** How far each may stray by itself before metal meets metal as traced; null where a way touches as it is. */
export function forgivenBy(joint: Joint, legs: readonly Leg[]): Wander | null {
  const clearanceMm = wanderClearanceMm(joint, legs, noWander);
  if (clearanceMm !== null && clearanceMm <= 0) return null;
  const most = (of: keyof Wander, limit: number): number => {
    const keeps = (value: number): boolean => (wanderClearanceMm(joint, legs, { ...noWander, [of]: value }) ?? 1) > 0;
    if (keeps(limit)) return limit;
    let [free, touches] = [0, limit];
    for (let k = 0; k < halvings; k++) {
      const middle = (free + touches) / 2;
      if (keeps(middle)) free = middle;
      else touches = middle;
    }
    return free;
  };
  return {
    turnRad: most('turnRad', mostForgiven.turnRad),
    standOffMm: most('standOffMm', mostForgiven.standOffMm),
    shiftMm: most('shiftMm', mostForgiven.shiftMm),
    tiltRad: most('tiltRad', mostForgiven.tiltRad),
  };
}

const degree = Math.PI / 180;

/** Nobody strays farther; what is forgiven up to here needs no care. */
export const mostForgiven: Wander = { turnRad: 15 * degree, standOffMm: 25, shiftMm: 25, tiltRad: 5 * degree };

/** To a ten thousandth of the most. */
const halvings = 14;
