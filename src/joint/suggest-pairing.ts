import { apply, type Rigid } from '../geometry/plane/rigid.ts';
import { distance } from '../geometry/plane/vec.ts';
import type { Hole } from '../job/casting.ts';
import type { HolePair } from '../job/job.ts';
import { bestFit, pointPair } from './dowel-up.ts';

/** Holes as they are paired, both parts in frames that are congruent to their drawings, mm. */
export interface HolePairing {
  readonly dowels: readonly HolePair[];
  readonly bolts: readonly HolePair[];
}

/** How far a pair may be off and still be taken for one, mm. */
export interface PairLimits {
  readonly dowelMm: number;
  readonly boltMm: (pair: HolePair) => number;
}

/** Of more dowels than these no two are tried crosswise: the ways grow with their square. */
const mostDowelsCrossed = 6;

/** One pairing must fit this many times better than the next, and by this much, to be believed. */
const decisiveRatio = 3;
const decisiveMm = 1;

/**
 * The pairs that should stand instead of those that are there; empty where no other pairing makes every hole register,
 * or more than one does. Dowels are tried as paired and two of them crosswise; the moving part is carried home on
 * them, and each paired bolt hole of the fixed part given the nearest hole of the moving part, one to one.
 */
export function suggestPairing(paired: HolePairing, movingHoles: readonly Hole[], limits: PairLimits): HolePair[] {
  const tried = [paired.dowels, ...crossed(paired.dowels)]
    .map((dowels) => pairingWith(dowels, paired.bolts, movingHoles, limits))
    .sort((a, b) => a.rmsMm - b.rmsMm);
  const [best, second] = tried;
  if (best === undefined || !best.holds || (second && !clearlyWorse(second.rmsMm, best.rmsMm))) return [];
  const stands = new Map([...paired.dowels, ...paired.bolts].map((pair) => [pair.fixed, pair.moving.id]));
  const changed = [...best.dowels, ...best.bolts].filter(({ fixed, moving }) => stands.get(fixed) !== moving.id);
  return changed.every(({ fixed }) => best.certain.has(fixed)) ? changed : [];
}

interface Pairing extends HolePairing {
  /** Over all pairs; infinite where a bolt is left without a hole. */
  readonly rmsMm: number;
  readonly holds: boolean;
  /** The fixed holes to which no other hole comes nearly as near. */
  readonly certain: ReadonlySet<Hole>;
}

/** Every two dowels with their moving holes exchanged. */
function crossed(dowels: readonly HolePair[]): HolePair[][] {
  if (dowels.length > mostDowelsCrossed) return [];
  return dowels.flatMap((a, i) =>
    dowels.slice(i + 1).map((b) =>
      dowels.map((pair) => {
        if (pair === a) return { fixed: a.fixed, moving: b.moving };
        return pair === b ? { fixed: b.fixed, moving: a.moving } : pair;
      }),
    ),
  );
}

function pairingWith(
  dowels: readonly HolePair[],
  wanted: readonly HolePair[],
  holes: readonly Hole[],
  limits: PairLimits,
): Pairing {
  const { motion, offsetsMm } = bestFit(dowels.map(pointPair));
  const free = holes.filter(({ id }) => dowels.every(({ moving }) => moving.id !== id)).map(carriedBy(motion));
  const bolts = nearestOneToOne(
    wanted.map(({ fixed }) => fixed),
    free,
  );
  const offMm = bolts.map(({ fixed, moving }) => distance(fixed.at, moving.at));
  const all = [...offsetsMm, ...offMm];
  return {
    dowels,
    bolts,
    rmsMm: bolts.length < wanted.length ? Infinity : Math.hypot(...all) / Math.sqrt(Math.max(1, all.length)),
    holds:
      bolts.length === wanted.length &&
      offsetsMm.every((mm) => 2 * mm <= limits.dowelMm) &&
      bolts.every((pair, i) => (offMm[i] as number) <= limits.boltMm(pair)),
    certain: new Set([
      ...dowels.map(({ fixed }) => fixed),
      ...bolts.filter(({ fixed }, i) => isLonely(fixed, free, offMm[i] as number)).map(({ fixed }) => fixed),
    ]),
  };
}

const carriedBy =
  (motion: Rigid) =>
  (hole: Hole): Hole => ({ ...hole, at: apply(motion, hole.at) });

/** Whether no hole but the nearest comes nearly as near. */
function isLonely({ at }: Hole, holes: readonly Hole[], nearestMm: number): boolean {
  const near = holes.filter((hole) => !clearlyWorse(distance(at, hole.at), nearestMm));
  return near.length === 1;
}

/** The nearest two that may be paired first, then the nearest two of what is left. */
export function nearestOneToOne(
  fixed: readonly Hole[],
  moving: readonly Hole[],
  may: (fixed: Hole, moving: Hole) => boolean = () => true,
): HolePair[] {
  const ways = fixed
    .flatMap((f) => moving.flatMap((m) => (may(f, m) ? [{ fixed: f, moving: m, mm: distance(f.at, m.at) }] : [])))
    .sort((a, b) => a.mm - b.mm);
  const found = new Map<Hole, Hole>();
  const taken = new Set<Hole>();
  for (const way of ways) {
    if (found.has(way.fixed) || taken.has(way.moving)) continue;
    found.set(way.fixed, way.moving);
    taken.add(way.moving);
  }
  return fixed.flatMap((f) => {
    const m = found.get(f);
    return m === undefined ? [] : [{ fixed: f, moving: m }];
  });
}

export const clearlyWorse = (bad: number, good: number): boolean =>
  bad > decisiveRatio * good && bad - good > decisiveMm;
