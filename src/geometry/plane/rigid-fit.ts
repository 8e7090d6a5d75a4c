import { apply, type Rigid, rigid, rotate } from './rigid.ts';
import { add, cross, distance, dot, length, scale, sub, type Vec, vec } from './vec.ts';

/** A point and the place it should be carried to. */
export interface PointPair {
  readonly from: Vec;
  readonly to: Vec;
}

export interface RigidFit {
  readonly motion: Rigid;
  /** What is left between each carried point and its place, mm, in the order of the pairs. */
  readonly offsetsMm: readonly number[];
  /** √(mean of offset²), mm. */
  readonly rmsMm: number;
}

// below this share of the sums' own size a turn is made of rounding alone
const noTurn = 1e-12;

/**
 * The rigid motion, without scale or mirror, that carries the `from` points nearest to their `to` points by least
 * squares (one pair or more; mm). With both sets about their centroids the turn is atan2(Σ from × to, Σ from · to):
 * the plane case of Kabsch, Acta Cryst. A32 (1976) 922. Where no turn is better than another it is 0.
 */
export function rigidFit(pairs: readonly PointPair[]): RigidFit {
  const middle: PointPair = { from: centroid(pairs.map((p) => p.from)), to: centroid(pairs.map((p) => p.to)) };
  const turn = rigid(bestTurnRad(pairs, middle), vec(0, 0));
  const motion: Rigid = { ...turn, shift: sub(middle.to, rotate(turn, middle.from)) };
  const offsetsMm = pairs.map(({ from, to }) => distance(apply(motion, from), to));
  return { motion, offsetsMm, rmsMm: rms(offsetsMm) };
}

function bestTurnRad(pairs: readonly PointPair[], middle: PointPair): number {
  let crossSum = 0;
  let dotSum = 0;
  let size = 0;
  for (const pair of pairs) {
    const from = sub(pair.from, middle.from);
    const to = sub(pair.to, middle.to);
    crossSum += cross(from, to);
    dotSum += dot(from, to);
    size += length(from) * length(to);
  }
  return Math.hypot(crossSum, dotSum) <= noTurn * size ? 0 : Math.atan2(crossSum, dotSum);
}

const centroid = (points: readonly Vec[]): Vec => scale(points.reduce(add, vec(0, 0)), 1 / points.length);

const rms = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
