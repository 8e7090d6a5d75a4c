import { type Rigid, rigid, rotate } from '../../geometry/plane/rigid.ts';
import { angleOf, distance, length, lerp, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { MatchOptions } from './pattern.ts';

/** Two holes of a pattern, by their places in it. */
interface Base {
  readonly a: Vec;
  readonly b: Vec;
  readonly longMm: number;
}

/** So many pairs of the fixed pattern are tried: half of them are of true holes even among three strays in ten. */
const mostBases = 600;

/**
 * Every position worth a trial: with a common centre those at which a hole comes upon one as far from it, else those at
 * which two holes come upon two as far from one another. Longest pairs first, since they tell the turn best; where there
 * are more than 600, so many spread evenly over the longer half.
 */
export function* trialMotions(fixed: readonly Vec[], moving: readonly Vec[], options: MatchOptions): Generator<Rigid> {
  if (options.centred) yield* turnsAboutCentre(fixed, moving, options.reachMm);
  else yield* motionsOfPairs(fixed, moving, options.reachMm);
}

function* turnsAboutCentre(fixed: readonly Vec[], moving: readonly Vec[], reachMm: number): Generator<Rigid> {
  const outermostFirst = [...fixed].sort((a, b) => length(b) - length(a));
  for (const to of outermostFirst) {
    for (const from of moving) {
      if (Math.abs(length(from) - length(to)) > 2 * reachMm || length(to) <= reachMm) continue;
      yield rigid(angleOf(to) - angleOf(from), vec(0, 0));
    }
  }
}

function* motionsOfPairs(fixed: readonly Vec[], moving: readonly Vec[], reachMm: number): Generator<Rigid> {
  const others = basesOf(moving, reachMm);
  for (const base of spread(basesOf(fixed, reachMm).reverse())) {
    for (let i = firstAtLeast(others, base.longMm - 2 * reachMm); i < others.length; i++) {
      const other = others[i] as Base;
      if (other.longMm > base.longMm + 2 * reachMm) break;
      yield carrying(other.a, other.b, base);
      yield carrying(other.b, other.a, base);
    }
  }
}

/** All pairs that are long enough to tell a turn, shortest first. */
const basesOf = (points: readonly Vec[], reachMm: number): Base[] =>
  points
    .flatMap((a, i) => points.slice(i + 1).map((b) => ({ a, b, longMm: distance(a, b) })))
    .filter(({ longMm }) => longMm > 4 * reachMm)
    .sort((p, q) => p.longMm - q.longMm);

function spread(longestFirst: readonly Base[]): readonly Base[] {
  if (longestFirst.length <= mostBases) return longestFirst;
  const half = Math.max(mostBases, Math.floor(longestFirst.length / 2));
  return Array.from({ length: mostBases }, (_, i) => longestFirst[Math.floor((i * half) / mostBases)] as Base);
}

function firstAtLeast(bases: readonly Base[], longMm: number): number {
  let [low, high] = [0, bases.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((bases[middle] as Base).longMm < longMm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The motion that lays `a`–`b` along a base, middle upon middle. */
function carrying(a: Vec, b: Vec, base: Base): Rigid {
  const turn = rigid(angleOf(sub(base.b, base.a)) - angleOf(sub(b, a)), vec(0, 0));
  return { ...turn, shift: sub(lerp(base.a, base.b, 0.5), rotate(turn, lerp(a, b, 0.5))) };
}
