import { distinctDepths } from '../clearance/distinct-depths.ts';
import { matingRule } from '../clearance/passings.ts';
import { turningRule } from '../clearance/rotating.ts';
import { type DepthRule, isStretch, reachOf, sharedStandOffs } from '../clearance/shared-depth.ts';
import type { DepthRange } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { dowelsProudMm } from '../joint/path-notices.ts';
import { type Metal, metalsOf, turningRings } from './metals.ts';

/** Metal of the two parts that shares depth while the stand-off lies within a strip. */
export interface StripPair {
  readonly fixed: Metal;
  readonly moving: Metal;
  /** A clearance of its own, as parts that run round have; null: the one that is asked of the way in. */
  readonly ownMm: number | null;
  /** The stand-offs at which they share depth; null where they do at all. */
  readonly rangeMm: DepthRange | null;
}

/**
 * Stand-offs (mm) between two neighbours of those at which depths begin or cease to be shared: within them nothing that
 * a turn meets depends on the stand-off. Shut ranges, since where depths only meet end to end they are not shared.
 */
export interface Strip {
  readonly fromMm: number;
  readonly toMm: number;
  readonly pairs: readonly StripPair[];
  /** Whether the dowels are engaged, so that nothing turns. */
  readonly onDowels: boolean;
}

/** How much farther off than where anything can meet the way in begins, mm; decides on no answer. */
const beyondMm = 20;

/**
 * The strips from home outwards. The last is one in which nothing shares depth, but for metal that reaches through every
 * depth, and reaches as far as the way in of the job begins.
 */
export function stripsOf(joint: Joint): Strip[] {
  const all = allPairs(joint);
  const proudMm = dowelsProudMm(joint.fit.dowels);
  const ends = all.flatMap(({ rangeMm }) => (rangeMm === null ? [] : [rangeMm.fromMm, rangeMm.toMm]));
  const farthestMm = Math.max(0, proudMm, ...ends);
  const beginsMm = joint.fit.legs[0]?.from.standOffMm ?? 0;
  const breaks = distinctDepths([
    0,
    proudMm,
    ...ends.filter((mm) => mm >= 0),
    Math.max(farthestMm + beyondMm, beginsMm),
  ]);
  return breaks.slice(1).map((toMm, i) => {
    const fromMm = breaks[i] as number;
    const middleMm = (fromMm + toMm) / 2;
    const pairs = all.filter(({ rangeMm: at }) => at === null || (at.fromMm < middleMm && middleMm < at.toMm));
    return { fromMm, toMm, onDowels: middleMm < proudMm, pairs };
  });
}

/** Every two that can meet. */
export function allPairs(joint: Joint): StripPair[] {
  const moving = metalsOf(joint.moving);
  const { rotatingMm } = joint.fit.clearance;
  const { depth: turning } = turningRule(joint, []);
  return [
    ...pairsOf(metalsOf(joint.fixed), moving, matingRule(joint), null),
    ...joint.rotating.flatMap((part) => pairsOf(turningRings(part), moving, turning, rotatingMm)),
  ];
}

const pairsOf = (
  fixed: readonly Metal[],
  moving: readonly Metal[],
  rule: DepthRule,
  ownMm: number | null,
): StripPair[] =>
  fixed.flatMap((f) =>
    moving
      .filter((m) => !(f.solid.untraced && m.solid.untraced))
      .map((m) => ({ fixed: f, moving: m, ownMm, rangeMm: rangeOf(f, m, rule) })),
  );

const rangeOf = ({ solid: fixed }: Metal, { solid: moving }: Metal, rule: DepthRule): DepthRange | null =>
  isStretch(fixed) && isStretch(moving)
    ? sharedStandOffs(fixed.depth, reachOf(moving, fixed, rule, 'as-measured'))
    : null;
