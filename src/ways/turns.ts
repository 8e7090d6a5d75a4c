import { joinedSpans } from '../geometry/spans.ts';

/** A closed range of turns of the moving part about the crank axis, in radians. */
export interface TurnRange {
  readonly fromRad: number;
  readonly toRad: number;
}

/** As far as there is usually room to turn it, either way. */
export const usualTurns: TurnRange = { fromRad: -Math.PI / 4, toRad: Math.PI / 4 };

/** Ranges in order, those that meet or overlap made one. */
export const joined = (ranges: readonly TurnRange[]): TurnRange[] =>
  joinedSpans(ranges.map(({ fromRad, toRad }) => [fromRad, toRad])).map(([fromRad, toRad]) => ({ fromRad, toRad }));

/** What some ranges, in order and apart, leave of `all`; nothing but single turns is nothing. */
export function leftOf(all: TurnRange, ranges: readonly TurnRange[]): TurnRange[] {
  const left: TurnRange[] = [];
  let from = all.fromRad;
  for (const { fromRad, toRad } of ranges) {
    if (Math.min(fromRad, all.toRad) > from) left.push({ fromRad: from, toRad: Math.min(fromRad, all.toRad) });
    from = Math.max(from, toRad);
  }
  if (all.toRad > from) left.push({ fromRad: from, toRad: all.toRad });
  return left;
}

/** What two ranges have in common, a single turn at the least; null where they are apart. */
export function common(a: TurnRange, b: TurnRange): TurnRange | null {
  const [fromRad, toRad] = [Math.max(a.fromRad, b.fromRad), Math.min(a.toRad, b.toRad)];
  return fromRad <= toRad ? { fromRad, toRad } : null;
}

export const contains = ({ fromRad, toRad }: TurnRange, turnRad: number): boolean =>
  fromRad <= turnRad && turnRad <= toRad;

export const widthRad = ({ fromRad, toRad }: TurnRange): number => toRad - fromRad;
