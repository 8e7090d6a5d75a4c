import type { Vec } from '../geometry/plane/vec.ts';
import { home, type Leg, legsThrough } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { RouteStep } from './route.ts';
import type { Strip } from './strips.ts';
import { common, contains, type TurnRange, widthRad } from './turns.ts';

/** Where the moving part stands on a way about the axis: a turn and a stand-off. */
export interface WayPoint {
  readonly turnRad: number;
  readonly standOffMm: number;
}

/** The same where it may be carried aside of the axis. */
export interface WayPlace extends WayPoint {
  readonly shift?: Vec;
}

/** How far from the end of a free range one turns if there is room, radians: a hand does not hold a turn more finely. */
const roomRad = (2 * Math.PI) / 180;

/**
 * The way along a route with as few turns as it has: it slides at one turn as long as that is free, then turns as little
 * as it must, but a little way from the ends of what is free, in the middle of a strip. From far out to home, unless told
 * otherwise.
 */
export function wayAlong(
  route: readonly RouteStep[],
  strips: readonly Strip[],
  beginsMm = strips.at(-1)?.toMm ?? 0,
  end: WayPoint = { turnRad: 0, standOffMm: 0 },
): WayPoint[] {
  const runs = slidesOf(route, end.turnRad);
  const turns = turnsOf(runs.map(({ window }) => window));
  const way: WayPoint[] = [{ turnRad: turns[0] ?? 0, standOffMm: beginsMm }];
  for (const [i, turnRad] of turns.slice(1).entries()) {
    const { fromMm, toMm } = strips[(runs[i + 1] as Slide).turnsIn] as Strip;
    const standOffMm = plain(fromMm + (toMm - fromMm) / 2, fromMm, toMm, mmSteps);
    way.push({ turnRad: turns[i] as number, standOffMm }, { turnRad, standOffMm });
  }
  return plainWay([...way, end]);
}

/** A stretch of a route that can be gone at one turn, any of its window; before it one turns in the strip `turnsIn`. */
interface Slide {
  readonly window: TurnRange;
  readonly turnsIn: number;
}

function slidesOf(route: readonly RouteStep[], endRad: number): Slide[] {
  const slides: Slide[] = [];
  let before = route[0] as RouteStep;
  let slide: Slide = { window: before.range, turnsIn: before.strip };
  for (const step of route) {
    const window = common(slide.window, step.range);
    if (window === null) slides.push(slide);
    slide = window === null ? { window: overlap(before, step), turnsIn: before.strip } : { ...slide, window };
    before = step;
  }
  const atEnd: TurnRange = { fromRad: endRad, toRad: endRad };
  if (contains(slide.window, endRad)) return [...slides, { ...slide, window: atEnd }];
  return [...slides, slide, { window: atEnd, turnsIn: before.strip }];
}

/** Steps of a route overlap. */
const overlap = (a: RouteStep, b: RouteStep): TurnRange => common(a.range, b.range) ?? b.range;

/** One turn for each window, near the one after it. */
function turnsOf(windows: readonly TurnRange[]): number[] {
  return windows.map((window, i) => {
    const next = windows[i + 1];
    const room = Math.min(widthRad(window) / 2, roomRad);
    if (next === undefined) return window.fromRad;
    const end = next.fromRad > window.toRad ? window.toRad - room : window.fromRad + room;
    return plain(end, window.fromRad + room / 2, window.toRad - room / 2, radSteps);
  });
}

const degree = Math.PI / 180;
export const radSteps = [degree, degree / 2, degree / 10, degree / 100];
export const mmSteps = [1, 0.5, 0.1, 0.01];

/** The plainest figure beside a value that lies within some range; the value itself where there is none. */
export function plain(value: number, from: number, to: number, steps: readonly number[]): number {
  const plainer = steps.map((step) => Math.round(value / step) * step);
  return plainer.find((rounded) => from <= rounded && rounded <= to) ?? value;
}

/** A way without the positions that lie within a slide or a turn of it. */
export function plainWay(way: readonly WayPoint[]): WayPoint[] {
  const kept: WayPoint[] = [];
  for (const point of way) {
    const [before, last] = [kept.at(-2), kept.at(-1)];
    if (last !== undefined && isSame(last, point)) continue;
    const passes = (of: keyof WayPoint): boolean => before?.[of] === point[of] && last?.[of] === point[of];
    if (passes('turnRad') || passes('standOffMm')) kept.pop();
    kept.push(point);
  }
  return kept;
}

/** The legs of a way about the axis, on which nothing moves aside and so every motion is a single one. */
export const legsOf = (way: readonly WayPoint[]): Leg[] =>
  legsThrough(plainWay(way).map(({ turnRad, standOffMm }) => ({ ...home, turnRad, standOffMm }))) ?? [];

/** A joint as it would be gone in along other legs. */
export const alongLegs = (joint: Joint, legs: readonly Leg[]): Joint => ({ ...joint, fit: { ...joint.fit, legs } });

const isSame = (a: WayPoint, b: WayPoint): boolean => a.turnRad === b.turnRad && a.standOffMm === b.standOffMm;
