import type { Progress } from '../../geometry/progress.ts';
import { legsThrough } from '../../job/path.ts';
import { planCut } from '../../plan/plan-cut.ts';
import { byMetal, type CutWay, type WayCut, wayCut, worthATurn } from '../cheapest/cheapest-ways.ts';
import { routeTo } from '../route.ts';
import { contains } from '../turns.ts';
import { alongLegs, type WayPoint } from '../way-along.ts';
import { type LiftedWay, type LiftSearch, liftedPart, onTheAxis, slidesOver } from './lifted-way.ts';

/** A way that begins carried aside, with the cut that it takes from where it comes onto the axis. */
export type LiftedCut = LiftedWay & WayCut;

/**
 * What the cheapest ways about the axis would cost if each were come to from aside as near home as the grid of shifts
 * shows: until then nothing is in the way, so only what comes after takes metal. The least of them, where it is less than
 * the least about the axis; null where none is. No bound: other places of the axis may be come to at other shifts.
 */
export function* cheapestLifted(search: LiftSearch, ways: readonly CutWay[]): Generator<Progress, LiftedCut | null> {
  const { joint } = search;
  const cuts: LiftedCut[] = [];
  for (const [done, { way }] of ways.entries()) {
    yield { step: 'the cut of a lifted way', done, of: ways.length };
    const lifted = nearestHome(search, way);
    const legs = lifted && legsThrough(lifted.positions);
    if (lifted !== null && legs !== null) cuts.push({ ...lifted, ...wayCut(yield* planCut(alongLegs(joint, legs))) });
  }
  const [least] = cuts.toSorted(byMetal);
  const [onAxis] = ways;
  if (least === undefined || onAxis === undefined || byMetal(least, onAxis) >= 0) return null;
  const isWorth = least.holds !== onAxis.holds || (least.volumeMm3 ?? 0) < worthATurn * (onAxis.volumeMm3 ?? 0);
  return isWorth ? least : null;
}

/** A way come to from aside as near home as may be; null where it is nowhere but far out. */
function nearestHome(search: LiftSearch, way: readonly WayPoint[]): LiftedWay | null {
  const { joint, strips, near, shifts, mapAt } = search;
  for (const [i, strip] of strips.slice(0, -1).entries()) {
    const standOffMm = Math.max(strip.fromMm, joint.fit.engagesAtMm ?? 0);
    if (strip.onDowels || standOffMm >= strip.toMm) continue;
    const rest = wayFrom(way, standOffMm);
    const [over] = rest;
    if (over === undefined) continue;
    for (const shift of shifts) {
      const { free, fromFar } = mapAt(shift);
      const aside = (free[i] ?? []).find((range) => fromFar.has(range) && contains(range, over.turnRad));
      if (aside === undefined || !slidesOver(strip, near, over.turnRad, shift)) continue;
      const begins = liftedPart(routeTo(aside, fromFar), strips, shift, over);
      return { shift, positions: [...begins, ...rest.map(onTheAxis)] };
    }
  }
  return null;
}

/** The rest of a way from where it first comes as near as a stand-off; none where it begins nearer. */
function wayFrom(way: readonly WayPoint[], standOffMm: number): WayPoint[] {
  const next = way.findIndex((point) => point.standOffMm <= standOffMm);
  const [before, after] = [way[next - 1], way[next]];
  if (before === undefined || after === undefined) return [];
  const share = (before.standOffMm - standOffMm) / (before.standOffMm - after.standOffMm);
  const turnRad = before.turnRad + share * (after.turnRad - before.turnRad);
  return [{ turnRad, standOffMm }, ...way.slice(next)];
}
