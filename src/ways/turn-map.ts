import type { Vec } from '../geometry/plane/vec.ts';
import { blockedTurns, type Nearness } from './blocked-turns.ts';
import type { Strip } from './strips.ts';
import { contains, joined, leftOf, type TurnRange } from './turns.ts';

/** What turns at the stand-offs of a strip come to. What is not told is free. */
export interface MapStrip {
  readonly strip: Strip;
  readonly free: readonly TurnRange[];
  /** Nearer than the clearance asked, metal of the part that runs round among it. */
  readonly near: readonly TurnRange[];
  readonly foul: readonly TurnRange[];
  /** Free of all that was traced, but where nobody has looked metal may stand as near. */
  readonly unknown: readonly TurnRange[];
}

/** The free turns of every strip, from home outwards. */
export type FreeTurns = readonly (readonly TurnRange[])[];

/**
 * The turns at which nothing traced, or with `untraced` nothing that might be there either, comes nearer than asked; of a
 * part carried `aside` none while the dowels are engaged.
 */
export const freeTurns = (
  strips: readonly Strip[],
  near: Nearness,
  asked: TurnRange,
  counting: 'traced' | 'untraced-too',
  aside: Vec | null = null,
): FreeTurns =>
  strips.map((strip) => {
    const pairs = counting === 'traced' ? tracedOf(strip) : strip.pairs;
    if (aside !== null && strip.onDowels) return [];
    return asDowelsAllow(strip, leftOf(asked, blockedBy(pairs, near, asked, aside)));
  });

/** The map of turns and stand-offs for a clearance. */
export function turnMap(strips: readonly Strip[], near: Nearness, asked: TurnRange): MapStrip[] {
  const touching: Nearness = { clearanceMm: 0, arcsMm: 0 };
  return strips.map((strip) => {
    const traced = tracedOf(strip).filter(({ ownMm }) => ownMm === null);
    const foul = blockedBy(traced, touching, asked);
    const blocked = blockedBy(tracedOf(strip), near, asked);
    const notSeen = blockedBy(strip.pairs, near, asked);
    return {
      strip,
      free: leftOf(asked, notSeen),
      near: without(blocked, foul),
      foul,
      unknown: without(notSeen, blocked),
    };
  });
}

const tracedOf = ({ pairs }: Strip): Strip['pairs'] =>
  pairs.filter(({ fixed, moving }) => !(fixed.solid.untraced || moving.solid.untraced));

const blockedBy = (pairs: Strip['pairs'], near: Nearness, asked: TurnRange, aside: Vec | null = null): TurnRange[] =>
  joined(pairs.flatMap((pair) => blockedTurns(pair, near, asked, aside)));

const without = (ranges: readonly TurnRange[], taken: readonly TurnRange[]): TurnRange[] =>
  ranges.flatMap((range) => leftOf(range, taken));

/** While the dowels are engaged there is the turn of home and no other. */
const asDowelsAllow = ({ onDowels }: Strip, free: TurnRange[]): TurnRange[] =>
  onDowels ? free.filter((range) => contains(range, 0)).map(() => ({ fromRad: 0, toRad: 0 })) : free;
