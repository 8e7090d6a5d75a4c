import type { FreeTurns } from './turn-map.ts';
import { common, contains, type TurnRange } from './turns.ts';

/** A free range of turns of one strip, strips counted from home outwards. */
export interface RouteStep {
  readonly strip: number;
  readonly range: TurnRange;
}

/** The steps that can be come to from some, each with the one it was come to from first. */
export type Reached = ReadonlyMap<TurnRange, { readonly step: RouteStep; readonly from: TurnRange | null }>;

/**
 * All that can be come to, through the fewest strips. Two ranges of neighbouring strips are joined where they overlap,
 * since at the stand-off between them what holds in both holds.
 */
export function reachedFrom(begun: readonly RouteStep[], free: FreeTurns): Reached {
  const reached = new Map(begun.map((step) => [step.range, { step, from: null as TurnRange | null }]));
  const open = [...begun];
  for (const step of open) {
    for (const next of neighboursOf(step, free)) {
      if (reached.has(next.range)) continue;
      reached.set(next.range, { step: next, from: step.range });
      open.push(next);
    }
  }
  return reached;
}

/** The steps of one strip as the beginning of a route. */
export const stepsOf = (free: FreeTurns, strip: number): RouteStep[] =>
  (free[strip] ?? []).map((range) => ({ strip, range }));

/** The way through the fewest strips from where nothing meets to home, in that order; null where there is none. */
export function routeHome(free: FreeTurns): RouteStep[] | null {
  const reached = reachedFrom(stepsOf(free, free.length - 1), free);
  const atHome = (free[0] ?? []).find((range) => contains(range, 0) && reached.has(range));
  return atHome === undefined ? null : routeTo(atHome, reached);
}

/** The steps to one that is reached. */
export function routeTo(last: TurnRange, reached: Reached): RouteStep[] {
  const steps: RouteStep[] = [];
  for (let range: TurnRange | null = last; range !== null; ) {
    const found = reached.get(range);
    if (found === undefined) return [];
    steps.unshift(found.step);
    range = found.from;
  }
  return steps;
}

const neighboursOf = ({ strip, range }: RouteStep, free: FreeTurns): RouteStep[] =>
  [strip - 1, strip + 1].flatMap((beside) =>
    stepsOf(free, beside).filter((other) => common(range, other.range) !== null),
  );
