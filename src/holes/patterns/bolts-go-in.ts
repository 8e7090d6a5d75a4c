import { apply, type Rigid, rigid, rotate } from '../../geometry/plane/rigid.ts';
import { add, cross, distance, dot, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';

/** A bolt by both its holes, and how far they may be off one another; mm. */
export interface BoltedPair {
  readonly from: Vec;
  readonly to: Vec;
  readonly allowedMm: number;
}

/** Whether all the bolts can go in at once, and where the part lies when they do. */
export interface BoltsGoIn {
  /** `undecided` where neither a place for all nor a proof that there is none was found. */
  readonly conclusion: 'go-in' | 'cannot' | 'undecided';
  /** Where the fullest hole is the least full. */
  readonly motion: Rigid;
  /** How full that one is: 1 where its bolt just goes in; null where a bolt is as thick as its hole. */
  readonly fullest: number | null;
}

const mostRounds = 400;
/** A hair over full is full: a millionth. */
const hair = 1e-6;

/**
 * Whether a part can be laid so that each bolt is off its hole by no more than it may be. Fits by weighted least squares,
 * weights growing with how full each hole is (Lawson's way to the least greatest error), until the fullest hole is full
 * no more, or the fit itself is a proof: no position makes the fullest hole less full than the weighted root mean square
 * of the best one, since a greatest is never less than a mean. Null for no bolts.
 */
export function boltsGoIn(bolts: readonly BoltedPair[], centred: boolean): BoltsGoIn | null {
  if (bolts.length === 0) return null;
  if (bolts.some(({ allowedMm }) => allowedMm <= 0))
    return { conclusion: 'cannot', motion: weightedFit(bolts, equal(bolts), centred), fullest: null };
  let weights = equal(bolts);
  let best: BoltsGoIn | null = null;
  for (let round = 0; round < mostRounds; round++) {
    const motion = weightedFit(bolts, weights, centred);
    const full = bolts.map(({ from, to, allowedMm }) => distance(apply(motion, from), to) / allowedMm);
    const fullest = Math.max(...full);
    if (best?.fullest == null || fullest < best.fullest) best = { conclusion: 'undecided', motion, fullest };
    if (fullest <= 1 + hair) return { conclusion: 'go-in', motion, fullest };
    const atLeast = Math.sqrt(full.reduce((sum, f, i) => sum + (weights[i] as number) * f * f, 0));
    if (atLeast > 1 + hair) return { ...best, conclusion: 'cannot' };
    weights = normal(weights.map((weight, i) => weight * (full[i] as number)));
  }
  return best;
}

const equal = (bolts: readonly BoltedPair[]): number[] => bolts.map(() => 1 / bolts.length);

function normal(weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

/** The motion with the least weighted sum of (off / allowed)². */
function weightedFit(bolts: readonly BoltedPair[], weights: readonly number[], centred: boolean): Rigid {
  const shares = normal(bolts.map(({ allowedMm }, i) => (weights[i] as number) / Math.max(allowedMm, hair) ** 2));
  const middle = (of: (bolt: BoltedPair) => Vec): Vec =>
    centred ? vec(0, 0) : bolts.reduce((sum, bolt, i) => add(sum, scale(of(bolt), shares[i] as number)), vec(0, 0));
  const [from, to] = [middle((bolt) => bolt.from), middle((bolt) => bolt.to)];
  const sums = (product: (a: Vec, b: Vec) => number): number =>
    bolts.reduce((sum, bolt, i) => sum + (shares[i] as number) * product(sub(bolt.from, from), sub(bolt.to, to)), 0);
  const turn = rigid(Math.atan2(sums(cross), sums(dot)), vec(0, 0));
  return { ...turn, shift: sub(to, rotate(turn, from)) };
}
