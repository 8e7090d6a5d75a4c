import type { Rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { edgeCrossings } from './edge-crossings.ts';
import { EdgeSlot } from './edge-slot.ts';
import type { OutlineTree } from './outline-tree.ts';

/** How far one follows an outline from a crossing into the other solid: edges a micrometre long have all been seen by then. */
const longestWalk = 256;

/**
 * The edges of an outline that come up to another outline, cut where they cross it: between two cuts an edge runs
 * either inside the other solid or outside it.
 */
export class CutEdges {
  readonly #tree: OutlineTree;
  readonly #placement: Rigid;
  /** Fractions along each edge at which to part it, and points at which it may run deepest. */
  readonly #cuts = new Map<number, number[]>();
  readonly #points: Vec[] = [];
  readonly #slot = new EdgeSlot();
  readonly #crossings = new Float64Array(4);

  constructor(tree: OutlineTree, placement: Rigid) {
    this.#tree = tree;
    this.#placement = placement;
  }

  /** Notes where `own`, an edge of this outline, meets `other`, an edge of the other one. */
  cut(edge: number, own: EdgeSlot, other: EdgeSlot): void {
    const cuts = this.#cuts.get(edge) ?? [0, 1];
    this.#cuts.set(edge, cuts);
    const count = edgeCrossings(own, other, this.#crossings);
    for (let i = 0; i < count; i += 2) {
      cuts.push(fractionOf(own, this.#crossings[i] as number, this.#crossings[i + 1] as number));
    }
    if (own.arc && other.arc) this.#addLineOfCentres(own, other);
  }

  /** A crescent between two arcs is deepest on their line of centres. */
  #addLineOfCentres(own: EdgeSlot, other: EdgeSlot): void {
    const dx = other.cx - own.cx;
    const dy = other.cy - own.cy;
    const apart = Math.sqrt(dx * dx + dy * dy);
    if (apart === 0) return;
    for (const reach of [own.radius / apart, -own.radius / apart]) {
      const p = vec(own.cx + reach * dx, own.cy + reach * dy);
      if (own.spans(p.x, p.y)) this.#points.push(p);
    }
  }

  /**
   * The places at which the outline may run deepest in the other solid: on the cut edges, and at the vertices farther
   * on as long as they are `inside`.
   */
  *places(inside: (p: Vec) => boolean): Generator<Vec> {
    yield* this.#points;
    for (const [edge, cuts] of this.#cuts) yield* this.#middlesOf(edge, cuts);
    for (const edge of this.#cuts.keys()) {
      yield* this.#walk(edge, this.#tree.next, inside);
      yield* this.#walk(edge, this.#tree.previous, inside);
    }
  }

  #middlesOf(edge: number, cuts: number[]): Vec[] {
    this.#slot.load(this.#tree, edge, this.#placement);
    cuts.sort((a, b) => a - b);
    return cuts.slice(1).map((cut, i) => pointOf(this.#slot, (cut + (cuts[i] as number)) / 2));
  }

  *#walk(from: number, onward: Int32Array, inside: (p: Vec) => boolean): Generator<Vec> {
    const s = this.#slot;
    let edge = from;
    for (let step = 0; step < longestWalk; step++) {
      s.load(this.#tree, edge, this.#placement);
      const vertex = onward === this.#tree.next ? vec(s.bx, s.by) : vec(s.ax, s.ay);
      if (!inside(vertex)) return;
      yield vertex;
      edge = onward[edge] as number;
    }
  }
}

/** How far along an edge (0–1) one of its points lies. */
function fractionOf(s: EdgeSlot, x: number, y: number): number {
  if (!s.arc) {
    const { dx, dy } = s;
    return ((x - s.ax) * dx + (y - s.ay) * dy) / (dx * dx + dy * dy);
  }
  const turn = Math.atan2(y - s.cy, x - s.cx) - Math.atan2(s.ay - s.cy, s.ax - s.cx);
  const along = (Math.sign(s.sweepRad) * turn) % (2 * Math.PI);
  const sweep = Math.abs(s.sweepRad);
  const turnOn = along < 0 ? along + 2 * Math.PI : along;
  // a rounding before the start, or past the end, is the end itself
  return turnOn <= sweep ? turnOn / sweep : turnOn > sweep / 2 + Math.PI ? 0 : 1;
}

function pointOf(s: EdgeSlot, t: number): Vec {
  if (!s.arc) return vec(s.ax + t * s.dx, s.ay + t * s.dy);
  const angle = Math.atan2(s.ay - s.cy, s.ax - s.cx) + t * s.sweepRad;
  return vec(s.cx + s.radius * Math.cos(angle), s.cy + s.radius * Math.sin(angle));
}
