import { measureOf } from '../clearance/measure.ts';
import { pairRule, pairsOn } from '../clearance/pairs.ts';
import { atHome, type Way, waysOf } from '../clearance/passings.ts';
import { sidesOf } from '../clearance/solids.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { Nearness } from './blocked-turns.ts';
import { type RouteStep, routeHome } from './route.ts';
import type { Strip } from './strips.ts';
import { type FreeTurns, freeTurns } from './turn-map.ts';
import type { TurnRange } from './turns.ts';
import { legsOf, type WayPoint, wayAlong } from './way-along.ts';

/** The way that keeps the most clearance of all ways there are. */
export interface WidestWay {
  /** What it keeps, measured on it; null where nothing meets anything. */
  readonly clearanceMm: number | null;
  /** No way keeps more than this beyond it. */
  readonly boundMm: number;
  readonly way: readonly WayPoint[];
  readonly route: readonly RouteStep[];
}

/** The widest way is found to this, mm. */
const widestWithinMm = 1e-4;

/** Ways that keep more than this keep enough, mm: nobody asks for it. */
const farMm = 200;

/** Arcs as coarse as this tell most clearances apart, mm; decides on speed alone. */
const coarsestArcsMm = 1e-2;

/** Which ways are looked at: all of them, or those through some of the free turns. */
export type Within = (free: FreeTurns) => FreeTurns;

/**
 * The widest way by halving: at a clearance there is a way, which is then measured and may keep more, or none, and then
 * none keeps that clearance and what arcs were taken too large by. Null where metal meets metal on every way.
 */
export function* widestWay(
  joint: Joint,
  strips: readonly Strip[],
  asked: TurnRange,
  within: Within = (free) => free,
): Generator<Progress, WidestWay | null> {
  const routeAt = (near: Nearness): RouteStep[] | null =>
    routeHome(within(freeTurns(strips, near, asked, 'untraced-too')));
  const measured = (route: readonly RouteStep[]): WidestWay => {
    const way = wayAlong(route, strips);
    return { clearanceMm: leastMm(joint, waysOf(legsOf(way))), boundMm: 0, way, route };
  };

  yield { step: 'the widest way in', done: 0, of: 1 };
  const touching = routeAt({ clearanceMm: 0, arcsMm: 0 });
  if (touching === null) return null;
  let best = measured(touching);
  // every way ends at home
  let mostMm = Math.min(farMm, leastMm(joint, [atHome]) ?? farMm);
  let arcsMm = widestWithinMm / 8;
  let triedMm = mostMm - 2 * arcsMm;
  while (best.clearanceMm !== null && mostMm - best.clearanceMm > widestWithinMm) {
    yield { step: 'the widest way in', done: 0, of: 1 };
    const route = routeAt({ clearanceMm: triedMm, arcsMm });
    if (route === null) mostMm = triedMm + arcsMm;
    else best = measured(route);
    const leftMm = mostMm - (best.clearanceMm ?? mostMm);
    triedMm = mostMm - leftMm / 2;
    arcsMm = Math.min(coarsestArcsMm, leftMm / 8);
  }
  return { ...best, boundMm: best.clearanceMm === null ? 0 : Math.max(0, mostMm - best.clearanceMm) };
}

/** The least clearance on some ways, what nobody has traced taken for metal; null where nothing meets. */
const leastMm = (joint: Joint, ways: readonly Way[]): number | null =>
  measureOf(pairsOn(sidesOf(joint), ways, pairRule(joint)), farMm).clearanceMm;
