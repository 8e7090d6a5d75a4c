import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { RouteStep } from './route.ts';
import type { Strip } from './strips.ts';
import type { FreeTurns } from './turn-map.ts';
import { common, contains, type TurnRange } from './turns.ts';
import type { WayPoint } from './way-along.ts';
import { widestWay } from './widest-way.ts';

/** Where one must pass on a way home: at stand-offs of a range, turned so far. */
export interface Window {
  readonly fromMm: number;
  readonly toMm: number;
  readonly turns: TurnRange;
}

/** A family of ways home that can be moved into one another, farther in all the time. */
export interface Corridor {
  /** The most that a way through it keeps, mm; null where nothing meets. */
  readonly clearanceMm: number | null;
  readonly boundMm: number;
  readonly way: readonly WayPoint[];
  /** Only where it is narrower than the turns asked about, from the outside in. */
  readonly windows: readonly Window[];
}

/** More are told by nobody, and there are castings with thousands of pockets. */
const mostCorridors = 4;
const mostLookedAt = 64;

/** The corridors of a map, the widest first. */
export function* corridorsOf(
  joint: Joint,
  strips: readonly Strip[],
  free: FreeTurns,
  asked: TurnRange,
): Generator<Progress, Corridor[]> {
  const found: Corridor[] = [];
  for (const route of routesInward(free)) {
    const widest = yield* widestWay(joint, strips, asked, (turns) => insideOf(turns, route));
    if (widest === null) continue;
    const { clearanceMm, boundMm, way } = widest;
    found.push({ clearanceMm, boundMm, way, windows: windowsOf(route, strips, asked) });
  }
  return found.sort((a, b) => (b.clearanceMm ?? Infinity) - (a.clearanceMm ?? Infinity)).slice(0, mostCorridors);
}

/** Every route from the outermost strip to home that never goes out again, but no more than are looked at. */
function routesInward(free: FreeTurns): RouteStep[][] {
  const found: RouteStep[][] = [];
  const goOn = (route: readonly RouteStep[]): void => {
    const last = route.at(-1) as RouteStep;
    if (found.length >= mostLookedAt) return;
    if (last.strip === 0) {
      if (contains(last.range, 0)) found.push([...route]);
      return;
    }
    for (const range of free[last.strip - 1] ?? []) {
      if (leads.get(range) && common(last.range, range) !== null) goOn([...route, { strip: last.strip - 1, range }]);
    }
  };
  const leads = leadingHome(free);
  const strip = free.length - 1;
  for (const range of free[strip] ?? []) if (leads.get(range)) goOn([{ strip, range }]);
  return found;
}

/** Whether home can be reached from a range without going out again: so that no dead end is gone into. */
function leadingHome(free: FreeTurns): ReadonlyMap<TurnRange, boolean> {
  const leads = new Map<TurnRange, boolean>();
  for (const [strip, ranges] of free.entries()) {
    const inner = free[strip - 1] ?? [];
    for (const range of ranges) {
      const isHome = strip === 0 && contains(range, 0);
      leads.set(range, isHome || inner.some((other) => leads.get(other) === true && common(range, other) !== null));
    }
  }
  return leads;
}

/** Those free turns that lie in the corridor of a route. */
const insideOf = (free: FreeTurns, route: readonly RouteStep[]): FreeTurns =>
  free.map((ranges, strip) => {
    const own = route.find((step) => step.strip === strip);
    return ranges.filter((range) => own !== undefined && common(own.range, range) !== null);
  });

function windowsOf(route: readonly RouteStep[], strips: readonly Strip[], asked: TurnRange): Window[] {
  const windows: Window[] = [];
  for (const { strip, range } of route) {
    const { fromMm, toMm, onDowels } = strips[strip] as Strip;
    if (onDowels || isSame(range, asked)) continue;
    const last = windows.at(-1);
    if (last !== undefined && last.fromMm === toMm && isSame(last.turns, range))
      windows[windows.length - 1] = { ...last, fromMm };
    else windows.push({ fromMm, toMm, turns: range });
  }
  return windows;
}

/** Ranges worked out of one outline in two strips are the same to the last bit. */
const isSame = (a: TurnRange, b: TurnRange): boolean => a.fromRad === b.fromRad && a.toRad === b.toRad;
