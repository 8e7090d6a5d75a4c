import { mirrorPoint } from '../geometry/plane/loop.ts';
import { apply, type Rigid } from '../geometry/plane/rigid.ts';
import { rigidFit } from '../geometry/plane/rigid-fit.ts';
import { distance } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import type { HolePair } from '../job/job.ts';
import { pointPair } from './dowel-up.ts';
import { clearlyWorse, nearestOneToOne } from './suggest-pairing.ts';

/** Holes of two parts that come together at one position of the moving part, mm and radians. */
export interface HoleMatch {
  /** Dowel with dowel, bolt with bolt, and so on; in the order of the fixed part's holes. */
  readonly pairs: readonly (HolePair & { readonly offMm: number })[];
  readonly turnRad: number;
  readonly largestMm: number;
  readonly rmsMm: number;
}

export interface BestMatch extends HoleMatch {
  /** As many holes come together as well where the moving part is turned by these, beside {@link turnRad}. */
  readonly otherTurnsRad: readonly number[];
  /** More holes would come together with one of the parts seen from its other side. */
  readonly fitsMirrored: boolean;
}

/** Holes farther off are no pair: traced twice, they may miss by so much; common practice, no source. */
const reachMm = 3;
/** Two holes nearer to one another tell no turn. */
const leastBaseMm = 20;
/** The longest of so many are tried: they tell the turn best. */
const mostBases = 200;
/** Positions that differ by less are one. */
const sameTurnRad = 0.02;

/**
 * Where the most holes come together, each with one of its kind, over every turn and shift at which two of them do; of
 * positions that are as good the one turned least. Null where no two come together.
 */
export function matchHoles(fixed: readonly Hole[], moving: readonly Hole[]): BestMatch | null {
  const [best, ...others] = bestMatches(fixed, moving, 2);
  if (best === undefined) return null;
  const [mirrored] = bestMatches(
    fixed,
    moving.map((hole) => ({ ...hole, at: mirrorPoint(hole.at) })),
    best.pairs.length + 1,
  );
  return {
    ...best,
    otherTurnsRad: others.map(({ turnRad }) => nearestTurn(turnRad - best.turnRad)),
    fitsMirrored: (mirrored?.pairs.length ?? 0) > best.pairs.length,
  };
}

/** The same turn by less than a whole one, either way. */
const nearestTurn = (rad: number): number => Math.atan2(Math.sin(rad), Math.cos(rad));

/** The positions at which the most holes come together, where those are so many at least. */
function bestMatches(fixed: readonly Hole[], moving: readonly Hole[], least: number): HoleMatch[] {
  let most: HoleMatch[] = [];
  for (const motion of motionsTried(fixed, moving)) {
    const [lead] = most;
    // what brings fewer together anyhow need not be looked at closely
    if (!meetAt(fixed, moving, motion, lead?.pairs.length ?? least)) continue;
    const match = matchNear(fixed, moving, motion);
    if (match === null) continue;
    if (lead === undefined || match.pairs.length > lead.pairs.length) most = [match];
    else if (match.pairs.length === lead.pairs.length && !most.some((known) => isSame(known, match)))
      most = [...most, match];
  }
  const leastMm = Math.min(...most.map(({ rmsMm }) => rmsMm));
  return most
    .filter(({ rmsMm }) => !clearlyWorse(rmsMm, leastMm))
    .sort((a, b) => Math.abs(a.turnRad) - Math.abs(b.turnRad) || a.rmsMm - b.rmsMm);
}

interface Base {
  readonly ends: readonly [Hole, Hole];
  readonly longMm: number;
}

const basesOf = (holes: readonly Hole[]): Base[] =>
  holes
    .flatMap((a, i) => holes.slice(i + 1).map((b): Base => ({ ends: [a, b], longMm: distance(a.at, b.at) })))
    .filter(({ longMm }) => longMm >= leastBaseMm)
    .sort((a, b) => b.longMm - a.longMm);

/** Every position at which two holes come upon two of their kind. */
function* motionsTried(fixed: readonly Hole[], moving: readonly Hole[]): Generator<Rigid> {
  const others = basesOf(moving);
  for (const { ends, longMm } of basesOf(fixed).slice(0, mostBases)) {
    for (const other of others) {
      if (Math.abs(other.longMm - longMm) > 2 * reachMm) continue;
      for (const [a, b] of [other.ends, [other.ends[1], other.ends[0]]] as const) {
        if (isAlike(ends[0], a) && isAlike(ends[1], b))
          yield rigidFit([
            { from: a.at, to: ends[0].at },
            { from: b.at, to: ends[1].at },
          ]).motion;
      }
    }
  }
}

/** Whether so many fixed holes at least have one of their kind about them. */
function meetAt(fixed: readonly Hole[], moving: readonly Hole[], motion: Rigid, least: number): boolean {
  const places = moving.map(({ at }) => apply(motion, at));
  let left = fixed.length;
  return fixed.every((hole) => {
    const meets = places.some((at, i) => distance(hole.at, at) <= reachMm && isAlike(hole, moving[i] as Hole));
    if (!meets) left -= 1;
    return left >= least;
  });
}

/** The holes that come together near a position, and the best position for those. */
function matchNear(fixed: readonly Hole[], moving: readonly Hole[], near: Rigid): HoleMatch | null {
  const paired = pairedAt(fixed, moving, near);
  if (paired.length < 2) return null;
  const { motion } = rigidFit(paired.map(pointPair));
  const pairs = pairedAt(fixed, moving, motion);
  if (pairs.length < 2) return null;
  const { motion: last, offsetsMm, rmsMm } = rigidFit(pairs.map(pointPair));
  return {
    pairs: pairs.map((pair, i) => ({ ...pair, offMm: offsetsMm[i] as number })),
    turnRad: last.turnRad,
    largestMm: Math.max(...offsetsMm),
    rmsMm,
  };
}

/** Pairs of holes of one kind within reach, the moving ones as their own part has them. */
function pairedAt(fixed: readonly Hole[], moving: readonly Hole[], motion: Rigid): HolePair[] {
  const own = new Map(moving.map((hole) => [{ ...hole, at: apply(motion, hole.at) }, hole]));
  return nearestOneToOne(fixed, [...own.keys()], isAlike)
    .filter((pair) => distance(pair.fixed.at, pair.moving.at) <= reachMm)
    .map((pair) => ({ fixed: pair.fixed, moving: own.get(pair.moving) as Hole }));
}

const isAlike = (a: Hole, b: Hole): boolean => a.kind === b.kind || (isForBolt(a) && isForBolt(b));

const isForBolt = ({ kind }: Hole): boolean => kind !== 'dowel' && kind !== 'bore';

const isSame = (a: HoleMatch, b: HoleMatch): boolean =>
  Math.abs(Math.sin((a.turnRad - b.turnRad) / 2)) < sameTurnRad / 2 && idsOf(a) === idsOf(b);

const idsOf = ({ pairs }: HoleMatch): string => pairs.map(({ fixed, moving }) => `${fixed.id} ${moving.id}`).join('\n');
