import type { Motion } from '../../../src/geometry/motion/motion.ts';
import type { Edge } from '../../../src/geometry/plane/edge.ts';
import { apply, compose, type Rigid, rigid, rotationAbout } from '../../../src/geometry/plane/rigid.ts';
import { distance, length, scale, type Vec } from '../../../src/geometry/plane/vec.ts';
import { edgeGap, placeEdge, roughGap } from './edge-gap.ts';
import { nested, outlineGap, placeSolid, type Solid } from './solid.ts';

/** Proved bounds on the least distance of two solids over a motion, and where the upper one is reached. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly at: number;
}

interface Pair {
  readonly f: Edge;
  readonly m: Edge;
  /** How fast the distance of the two can change, mm per whole motion. */
  readonly speed: number;
}

const mostPieces = 20_000;

const carriedBy = (motion: Motion, at: number): Rigid =>
  motion.kind === 'slide' ? rigid(0, scale(motion.by, at)) : rotationAbout(motion.pole, motion.angleRad * at);

export const placedAt = (moving: Solid, start: Rigid, motion: Motion, at: number): Solid =>
  placeSolid(moving, compose(carriedBy(motion, at), start));

/**
 * Least distance by branch and bound over time alone. No distance changes faster than the farthest point moves, so a
 * distance measured at the middle of a piece of time bounds the whole piece; a piece is halved until its bound is
 * within `stopMm` of the best distance found. It knows nothing of poles, feet, tangents or alignments.
 */
export function leastDistanceBounds(fixed: Solid, moving: Solid, start: Rigid, motion: Motion, stopMm: number): Bounds {
  const atStart = placedAt(moving, start, motion, 0);
  if (nested(fixed, atStart)) return { low: 0, high: 0, at: 0 };
  const search = new PieceSearch(motion, stopMm);
  search.run(fixed.edges.flatMap((f) => atStart.edges.map((m) => ({ f, m, speed: speedOf(motion, f, m) }))));
  const polished = polish(fixed, moving, start, motion, search.at, search.high);
  return { low: Math.min(search.low, polished.high), ...polished };
}

class PieceSearch {
  high = Number.POSITIVE_INFINITY;
  at = 0;
  /** A bound given up on because there were too many pieces. */
  low = Number.POSITIVE_INFINITY;
  #pieces = 0;
  readonly #motion: Motion;
  readonly #stopMm: number;

  constructor(motion: Motion, stopMm: number) {
    this.#motion = motion;
    this.#stopMm = stopMm;
  }

  run(pairs: readonly Pair[]): void {
    for (let i = 0; i <= 16; i++) this.#measure(pairs, i / 16, 0);
    this.#halve(pairs, 0, 1);
    this.low = Math.max(0, Math.min(this.low, this.high - this.#stopMm));
  }

  #halve(pairs: readonly Pair[], from: number, to: number): void {
    if (this.high === 0) return;
    const middle = (from + to) / 2;
    const left = this.#measure(pairs, middle, (to - from) / 2);
    if (left.length === 0) return;
    if (++this.#pieces > mostPieces) {
      this.low = Math.min(this.low, ...left.map((entry) => entry.bound));
      return;
    }
    const onward = left.map((entry) => entry.pair);
    this.#halve(onward, from, middle);
    this.#halve(onward, middle, to);
  }

  /** Measures pairs at an instant; returns those that may come nearer than the best within `half` of it. */
  #measure(pairs: readonly Pair[], at: number, half: number): { pair: Pair; bound: number }[] {
    const placement = carriedBy(this.#motion, at);
    const place = (p: Vec): Vec => apply(placement, p);
    const placed = new Map<Edge, Edge>();
    const left: { pair: Pair; bound: number }[] = [];
    for (const pair of pairs) {
      const m = placed.get(pair.m) ?? placeEdge(pair.m, place, placement.turnRad);
      placed.set(pair.m, m);
      const reach = pair.speed * half;
      // a hair of slack, for discs round as well
      if (roughGap(pair.f, m) - 1e-9 - reach >= this.high - this.#stopMm) continue;
      const { mm } = edgeGap(pair.f, m);
      if (mm < this.high) [this.high, this.at] = [mm, at];
      left.push({ pair, bound: mm - reach });
    }
    return left.filter((entry) => entry.bound < this.high - this.#stopMm);
  }
}

function speedOf(motion: Motion, f: Edge, m: Edge): number {
  if (motion.kind === 'slide') return length(motion.by);
  // seen from the moving outline it is the fixed one that turns
  return Math.abs(motion.angleRad) * Math.min(farthest(f, motion.pole), farthest(m, motion.pole));
}

const farthest = (edge: Edge, from: Vec): number =>
  edge.kind === 'line'
    ? Math.max(distance(edge.a, from), distance(edge.b, from))
    : distance(edge.centre, from) + edge.radius;

/** Golden-section search round an instant for the local minimum. */
function polish(
  fixed: Solid,
  moving: Solid,
  start: Rigid,
  motion: Motion,
  at: number,
  high: number,
): { high: number; at: number } {
  let best = { high, at };
  const measure = (t: number): number => {
    const { mm } = outlineGap(fixed, placedAt(moving, start, motion, t));
    if (mm < best.high) best = { high: mm, at: t };
    return mm;
  };
  const reach = 1 / 2048;
  let [from, to] = [Math.max(0, at - reach), Math.min(1, at + reach)];
  measure(from);
  measure(to);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [to - golden * (to - from), from + golden * (to - from)];
  let [atA, atB] = [measure(a), measure(b)];
  for (let i = 0; i < 45 && best.high > 0; i++) {
    if (atA < atB) {
      [to, b, atB] = [b, a, atA];
      a = to - golden * (to - from);
      atA = measure(a);
    } else {
      [from, a, atA] = [a, b, atB];
      b = from + golden * (to - from);
      atB = measure(b);
    }
  }
  return best;
}
