import type { FreeTurns } from './turn-map.ts';
import { common, contains, type TurnRange } from './turns.ts';

/** A free range of turns of one strip, strips counted from home outwards. */
export interface RouteStep {
  readonly strip: number;
  readonly range: TurnRange;
}

/**
 * The way through the fewest strips from where nothing meets to home, in that order; null where there is none. Two ranges
 * of neighbouring strips are joined where they overlap, since at the stand-off between them what holds in both holds; so
 * a way exists just when home can be reached from one to the next.
 */
export function routeHome(free: FreeTurns): RouteStep[] | null {
  const outermost = free.length - 1;
  const begun: RouteStep[] = (free[outermost] ?? []).map((range) => ({ strip: outermost, range }));
  const cameFrom = new Map<TurnRange, RouteStep | null>(begun.map(({ range }) => [range, null]));
  const open = [...begun];
  for (const step of open) {
    if (step.strip === 0 && contains(step.range, 0)) return back(step, cameFrom);
    for (const next of neighboursOf(step, free)) {
      if (cameFrom.has(next.range)) continue;
      cameFrom.set(next.range, step);
      open.push(next);
    }
  }
  return null;
}

const neighboursOf = ({ strip, range }: RouteStep, free: FreeTurns): RouteStep[] =>
  [strip - 1, strip + 1].flatMap((beside) =>
    (free[beside] ?? [])
      .filter((other) => common(range, other) !== null)
      .map((other) => ({ strip: beside, range: other })),
  );

function back(last: RouteStep, cameFrom: ReadonlyMap<TurnRange, RouteStep | null>): RouteStep[] {
  const steps: RouteStep[] = [];
  for (let step: RouteStep | null = last; step !== null; step = cameFrom.get(step.range) ?? null) steps.unshift(step);
  return steps;
}
