import { rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { EdgeSlot } from './edge-slot.ts';
import {
  endEdge,
  firstEdge,
  isLeaf,
  leftOf,
  nodeCount,
  type OutlineTree,
  rightOf,
  rootNode,
  startX,
  startY,
} from './outline-tree.ts';
import { angleSlackRad, centreShare, levelSlope, poleShare, tangentMm } from './tolerances.ts';

/** Facing of a radius-critical point: where the outline's radius has a local minimum, maximum, or may have either. */
export const isMinimum = 1;
export const isMaximum = 2;

/**
 * An outline seen from a pole: the radius and angle ranges of every node, and the points where the radius is critical.
 *
 * Ranges are exact for edges and merged upward; angles carry a slack far above their rounding.
 */
export interface PolarFrame {
  /**
   * minRadius, maxRadius, middleRad, halfWidthRad of each node; a half width of π is all round. Read as they lie where
   * nodes are compared by the million.
   */
  readonly nodes: Float64Array;
  /** How many critical points are kept of each edge: its start, and a line's foot or an arc's near and far point. */
  readonly perEdge: number;
  readonly radii: Float64Array;
  readonly angles: Float64Array;
  /** 0 where there is no such point, else `isMinimum` | `isMaximum`. */
  readonly facings: Uint8Array;
}

/** The critical points of an edge run from its first to just before that of the edge after it. */
export const firstCritical = ({ perEdge }: PolarFrame, edge: number): number => perEdge * edge;
export const radiusAt = ({ radii }: PolarFrame, critical: number): number => radii[critical] as number;
export const angleAt = ({ angles }: PolarFrame, critical: number): number => angles[critical] as number;
export const facingAt = ({ facings }: PolarFrame, critical: number): number => facings[critical] as number;

const frames = new WeakMap<OutlineTree, { x: number; y: number; frame: PolarFrame }[]>();

/** The polar frame of a tree about a pole in the tree's own coordinates; the last few are remembered. */
export function polarFrame(tree: OutlineTree, pole: Vec): PolarFrame {
  const known = frames.get(tree) ?? [];
  const found = known.find((entry) => entry.x === pole.x && entry.y === pole.y);
  if (found) return found.frame;
  const frame = buildPolarFrame(tree, pole);
  frames.set(tree, [{ x: pole.x, y: pole.y, frame }, ...known.slice(0, 3)]);
  return frame;
}

function buildPolarFrame(tree: OutlineTree, pole: Vec): PolarFrame {
  const { edgeCount } = tree;
  const builder = new FrameBuilder(tree, pole);
  for (let edge = 0; edge < edgeCount; edge++) builder.addStart(edge);
  for (let edge = 0; edge < edgeCount; edge++) builder.addEdge(edge);
  builder.markVertices();
  for (let node = nodeCount(tree) - 1; node >= rootNode; node--) {
    if (isLeaf(tree, node)) builder.setLeaf(node);
    else builder.mergeChildren(node);
  }
  return builder.frame;
}

class FrameBuilder {
  readonly frame: PolarFrame;
  readonly #tree: OutlineTree;
  readonly #toPole;
  readonly #slot = new EdgeSlot();
  /** Ranges of the edges, laid out as `nodes`. */
  readonly #edges: Float64Array;
  /** Slope of the radius as one leaves an edge's start, and as one arrives at its end. */
  readonly #startSlopes: Float64Array;
  readonly #endSlopes: Float64Array;

  constructor(tree: OutlineTree, pole: Vec) {
    const n = tree.edgeCount;
    this.#tree = tree;
    this.#toPole = rigid(0, vec(-pole.x, -pole.y));
    const perEdge = tree.arcs.length === 0 ? 2 : 3;
    this.frame = {
      nodes: new Float64Array(4 * nodeCount(tree)),
      perEdge,
      radii: new Float64Array(perEdge * n),
      angles: new Float64Array(perEdge * n),
      facings: new Uint8Array(perEdge * n),
    };
    this.#edges = new Float64Array(4 * n);
    this.#startSlopes = new Float64Array(n);
    this.#endSlopes = new Float64Array(n);
  }

  addStart(edge: number): void {
    const x = startX(this.#tree, edge) + this.#toPole.shift.x;
    const y = startY(this.#tree, edge) + this.#toPole.shift.y;
    this.#setCritical(edge, 0, Math.sqrt(x * x + y * y), Math.atan2(y, x), 0);
  }

  addEdge(edge: number): void {
    const s = this.#slot;
    s.load(this.#tree, edge, this.#toPole);
    const start = firstCritical(this.frame, edge);
    const end = firstCritical(this.frame, this.#tree.next[edge] as number);
    const ra = radiusAt(this.frame, start);
    const rb = radiusAt(this.frame, end);
    // an edge that starts or ends on the pole is seen where it goes
    const from = angleAt(this.frame, ra > 0 ? start : end);
    const to = angleAt(this.frame, rb > 0 ? end : start);
    this.#edges[4 * edge] = Math.min(ra, rb);
    this.#edges[4 * edge + 1] = Math.max(ra, rb);
    if (s.arc) this.#addArc(edge, s, from, to);
    else this.#addLine(edge, s, from, to);
    this.#startSlopes[edge] = slope(s, s.ax, s.ay, ra);
    this.#endSlopes[edge] = slope(s, s.bx, s.by, rb);
  }

  #addLine(edge: number, s: EdgeSlot, from: number, to: number): void {
    const { dx, dy } = s;
    const squared = dx * dx + dy * dy;
    const t = -(s.ax * dx + s.ay * dy) / squared;
    const turn = wrapRad(to - from);
    this.#setAngles(edge, from + turn / 2, Math.abs(turn) / 2);
    if (t <= 0 || t >= 1) return;
    const x = s.ax + t * dx;
    const y = s.ay + t * dy;
    const height = Math.sqrt(x * x + y * y);
    this.#edges[4 * edge] = Math.min(this.#edges[4 * edge] as number, height);
    this.#setCritical(edge, 1, height, Math.atan2(y, x), isMinimum);
    // the line runs through the pole, or all but: its two halves lie on opposite sides
    if (height < poleShare * Math.sqrt(squared)) this.#setAngles(edge, 0, Math.PI);
  }

  #addArc(edge: number, s: EdgeSlot, from: number, to: number): void {
    const away = Math.sqrt(s.cx * s.cx + s.cy * s.cy);
    const toCentre = Math.atan2(s.cy, s.cx);
    this.#setArcAngles(edge, s, from, to, away, toCentre);
    // about its own centre an arc is level all along: its ends serve
    if (away <= centreShare * s.radius) return;
    const ux = s.cx / away;
    const uy = s.cy / away;
    if (s.spans(s.cx + s.radius * ux, s.cy + s.radius * uy)) {
      this.#edges[4 * edge + 1] = away + s.radius;
      this.#setCritical(edge, 1, away + s.radius, toCentre, isMaximum);
    }
    if (s.spans(s.cx - s.radius * ux, s.cy - s.radius * uy)) {
      const near = Math.abs(away - s.radius);
      this.#edges[4 * edge] = near;
      this.#setCritical(edge, 2, near, away > s.radius ? toCentre : toCentre + Math.PI, isMinimum);
    }
  }

  #setArcAngles(edge: number, s: EdgeSlot, from: number, to: number, away: number, toCentre: number): void {
    if (away > s.radius * (1 + poleShare)) this.#setArcSeenFromOutside(edge, s, from, to, away, toCentre);
    else if (s.whole || away > s.radius * (1 - poleShare)) this.#setAngles(edge, 0, Math.PI);
    else {
      // from inside its circle one sees an arc run steadily round
      const way = Math.sign(s.sweepRad);
      const turn = positiveRad(way * (to - from));
      this.#setAngles(edge, from + (way * turn) / 2, turn / 2);
    }
  }

  /** From outside its circle an arc reaches from end to end, or to where a ray just touches it. */
  #setArcSeenFromOutside(edge: number, s: EdgeSlot, from: number, to: number, away: number, toCentre: number): void {
    const reach = Math.asin(s.radius / away);
    const start = wrapRad(from - toCentre);
    const end = wrapRad(to - toCentre);
    const tangent = Math.sqrt((away - s.radius) * (away + s.radius));
    const touches = (side: number): boolean =>
      s.spans(tangent * Math.cos(toCentre + side * reach), tangent * Math.sin(toCentre + side * reach), tangentMm);
    const low = touches(-1) ? -reach : Math.min(start, end);
    const high = touches(1) ? reach : Math.max(start, end);
    this.#setAngles(edge, toCentre + (low + high) / 2, (high - low) / 2);
  }

  /** A vertex is a local minimum where the radius falls to it and rises from it, and may be one where it is level. */
  markVertices(): void {
    const { previous, edgeCount } = this.#tree;
    for (let edge = 0; edge < edgeCount; edge++) {
      const before = this.#endSlopes[previous[edge] as number] as number;
      const after = this.#startSlopes[edge] as number;
      let facing = 0;
      if (before <= levelSlope && after >= -levelSlope) facing |= isMinimum;
      if (before >= -levelSlope && after <= levelSlope) facing |= isMaximum;
      this.frame.facings[firstCritical(this.frame, edge)] = facing;
    }
  }

  setLeaf(node: number): void {
    const first = firstEdge(this.#tree, node);
    const end = endEdge(this.#tree, node);
    for (let i = 0; i < 4; i++) this.frame.nodes[4 * node + i] = this.#edges[4 * first + i] as number;
    for (let edge = first + 1; edge < end; edge++)
      mergeRange(this.frame.nodes, 4 * node, this.frame.nodes, 4 * node, this.#edges, 4 * edge);
  }

  mergeChildren(node: number): void {
    mergeRange(this.frame.nodes, 4 * node, this.frame.nodes, 4 * leftOf(node), this.frame.nodes, 4 * rightOf(node));
  }

  #setCritical(edge: number, slot: number, radius: number, angle: number, facing: number): void {
    const i = firstCritical(this.frame, edge) + slot;
    this.frame.radii[i] = radius;
    this.frame.angles[i] = angle;
    this.frame.facings[i] = facing;
  }

  #setAngles(edge: number, middle: number, half: number): void {
    this.#edges[4 * edge + 2] = middle;
    this.#edges[4 * edge + 3] = Math.min(Math.PI, half + angleSlackRad);
  }
}

/** d(radius)/d(length) along the edge at one of its ends. */
function slope(s: EdgeSlot, x: number, y: number, radius: number): number {
  if (radius === 0) return 0;
  if (!s.arc) {
    const { dx, dy } = s;
    return (dx * x + dy * y) / (Math.sqrt(dx * dx + dy * dy) * radius);
  }
  return (Math.sign(s.sweepRad) * ((s.cy - y) * x + (x - s.cx) * y)) / (s.radius * radius);
}

/** Writes the range at `at` that takes in the ranges at `i` of `a` and at `j` of `b`. */
function mergeRange(nodes: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, j: number): void {
  const least = Math.min(a[i] as number, b[j] as number);
  const most = Math.max(a[i + 1] as number, b[j + 1] as number);
  const middle = a[i + 2] as number;
  const half = a[i + 3] as number;
  const apart = wrapRad((b[j + 2] as number) - middle);
  const otherHalf = b[j + 3] as number;
  const low = Math.min(-half, apart - otherHalf);
  const high = Math.max(half, apart + otherHalf);
  nodes[at] = least;
  nodes[at + 1] = most;
  nodes[at + 2] = middle + (low + high) / 2;
  nodes[at + 3] = Math.min(Math.PI, (high - low) / 2);
}

/** The same angle in [−π, π]. */
export function wrapRad(angle: number): number {
  if (angle >= -Math.PI && angle <= Math.PI) return angle;
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** The same angle in [0, 2π). */
export function positiveRad(angle: number): number {
  const wrapped = angle % (2 * Math.PI);
  return wrapped < 0 ? wrapped + 2 * Math.PI : wrapped;
}
