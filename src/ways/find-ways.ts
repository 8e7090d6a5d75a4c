import { checkJoint } from '../clearance/check.ts';
import type { CheckResult } from '../clearance/check-result.ts';
import { holdsClearance } from '../clearance/measure.ts';
import type { ReasonCode } from '../clearance/notices.ts';
import { reasonOf, reasonsBeforehand } from '../clearance/reasons.ts';
import { type Forgiven, forgivenBy } from '../clearance/wander/forgiven.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import { type CheapestWays, cheapestWays } from './cheapest/cheapest-ways.ts';
import { type Corridor, corridorsOf } from './corridors.ts';
import type { Lift } from './lifted/lift-grid.ts';
import { cheapestLifted, type LiftedCut } from './lifted/lifted-cut.ts';
import { type CheckedLift, liftedWay, liftSearch } from './lifted/lifted-way.ts';
import { routeHome } from './route.ts';
import { stripsOf } from './strips.ts';
import { freeTurns, type MapStrip, turnMap } from './turn-map.ts';
import type { TurnRange } from './turns.ts';
import { alongLegs, legsOf } from './way-along.ts';
import { type WidestWay, widestWay } from './widest-way.ts';

/** What carrying the part aside at first comes to, looked at where no way about the axis does without a cut. */
export interface Lifts {
  readonly lift: Lift;
  /** How many places aside were looked at. */
  readonly shifts: number;
  /** A way without cutting. */
  readonly way: CheckedLift | null;
  /** Where there is none, a cut cheaper than any about the axis. */
  readonly cut: LiftedCut | null;
}

/** Every way of turning about the crank axis and sliding along it, within some turns. */
export interface WaysResult {
  /** Why nothing is told; null where something is. */
  readonly reason: ReasonCode | 'no-depths' | null;
  readonly asked: TurnRange;
  readonly askedMm: number;
  /**
   * Whether a way keeps all that was asked without a cut; null where it cannot be said: none does unless what nobody has
   * traced is no metal, or nothing is told.
   */
  readonly exists: boolean | null;
  /** Null where metal meets metal on every way. */
  readonly widest: WidestWay | null;
  /** How far one may stray from the widest way, each by itself, before metal meets; null where there is none. */
  readonly forgives: Forgiven | null;
  /** The check along the widest way: home, what runs round and the wander of the fit count there too. */
  readonly check: CheckResult | null;
  /** The widest first; none where metal meets metal on every way. */
  readonly corridors: readonly Corridor[];
  /** Null where a way exists, about the axis or carried aside at first, and so nothing need be cut. */
  readonly cheapest: CheapestWays | null;
  readonly strips: readonly MapStrip[];
  /** Null where it was not asked for, or not needed. */
  readonly lifts: Lifts | null;
}

/** Blocked turns are told as if metal reached so much farther, mm. */
export const mapArcsMm = 1e-3;

/**
 * The map of turns and stand-offs of a job, whether a way in exists without cutting, the widest, and where there is none
 * the cheapest. Proved both ways for the outlines as traced: within a strip of stand-offs what a turn meets is complete,
 * and strips are joined where both are free. Where none exists it may be looked for with the part carried aside at first.
 */
export function* findWays(joint: Joint, asked: TurnRange, lift: Lift | null = null): Generator<Progress, WaysResult> {
  const askedMm = joint.fit.clearance.wayInMm;
  const looked = { asked, askedMm };
  const nothing = {
    ...looked,
    exists: null,
    widest: null,
    forgives: null,
    check: null,
    corridors: [],
    cheapest: null,
    lifts: null,
  };
  const reason = reasonNotToTell(joint);
  if (reason !== null) return { ...nothing, reason, strips: [] };
  const strips = stripsOf(joint);
  if (strips.at(-1)?.pairs.length !== 0) return { ...nothing, reason: 'no-depths', strips: [] };

  yield { step: 'the map of turns', done: 0, of: 1 };
  const near = { clearanceMm: askedMm, arcsMm: mapArcsMm };
  const map = turnMap(strips, near, asked);
  const widest = yield* widestWay(joint, strips, asked);
  const check = widest && (yield* checkJoint(along(joint, widest)));
  if (check !== null && check.reason !== null) return { ...nothing, reason: check.reason, strips: map };
  const forgives = widest && forgivenBy(along(joint, widest));
  const mayKeep = routeHome(freeTurns(strips, near, asked, 'traced')) !== null;
  const exists = check?.meetsClearance ? true : mayKeep && !failsAnyway(joint, check) ? null : false;
  const touching = freeTurns(strips, { clearanceMm: 0, arcsMm: 0 }, asked, 'untraced-too');
  const corridors = widest === null ? [] : yield* corridorsOf(joint, strips, touching, asked);
  const search = exists === true || lift === null ? null : liftSearch({ joint, strips, near, asked }, lift);
  const way = search && (yield* liftedWay(search));
  const cheapest = exists === true || way !== null ? null : yield* cheapestWays(joint, strips, asked);
  const cut = search && cheapest && (yield* cheapestLifted(search, cheapest.ways));
  const lifts = search && lift && { lift, shifts: search.shifts.length, way, cut };
  return { ...looked, reason: null, exists, widest, forgives, check, corridors, cheapest, strips: map, lifts };
}

const along = (joint: Joint, { way }: WidestWay): Joint => alongLegs(joint, legsOf(way));

/** Whether it is too close at home, or to what runs round, which no way in changes. */
function failsAnyway({ fit: { clearance } }: Joint, check: CheckResult | null): boolean {
  if (check === null) return false;
  const fails = (
    { state, clearanceMm }: Pick<CheckResult['home'], 'state' | 'clearanceMm'>,
    askedMm: number,
  ): boolean => state !== 'undecided' && !holdsClearance(state, clearanceMm, askedMm);
  return fails(check.home, clearance.homeMm) || check.rotating.some((part) => fails(part, clearance.rotatingMm));
}

/** What is wrong with a job whatever its way in, which is not what is asked about here. */
const reasonNotToTell = (joint: Joint): ReasonCode | null => reasonOf(joint, reasonsBeforehand(alongLegs(joint, [])));
