import { distance, type Vec } from '../../geometry/plane/vec.ts';
import { chordLength, firstOf, lastOf, type OpenLine } from './open-line.ts';

/**
 * The ends of lines while they are being linked: line i has ends 2i (its first vertex) and 2i + 1. Linked lines make
 * a chain; each free end knows its chain's other end and how long the chain is. Grows only.
 */
export class ChainEnds {
  readonly points: readonly Vec[];
  readonly #lines: readonly OpenLine[];
  readonly #partner: Int32Array;
  readonly #far: Int32Array;
  readonly #lengthMm: Float64Array;
  readonly #held = new Set<number>();
  readonly #meeting = new Map<number, Vec>();

  constructor(lines: readonly OpenLine[]) {
    this.#lines = lines;
    this.points = lines.flatMap((line) => [firstOf(line), lastOf(line)]).map(({ x, y }) => ({ x, y }));
    this.#partner = new Int32Array(this.points.length).fill(-1);
    this.#far = Int32Array.from(this.points, (_, end) => end ^ 1);
    this.#lengthMm = Float64Array.from(this.points, (_, end) => chordLength(lines[end >> 1] as OpenLine));
  }

  /** Links two free ends where they meet. */
  link(one: number, other: number, meeting: Vec): void {
    const [oneFar, otherFar] = [this.farFrom(one), this.farFrom(other)];
    const lengthMm = this.chainLength(one) + this.chainLength(other);
    this.#partner[one] = other;
    this.#partner[other] = one;
    this.#far[oneFar] = otherFar;
    this.#far[otherFar] = oneFar;
    this.#lengthMm[oneFar] = this.#lengthMm[otherFar] = lengthMm;
    this.#meeting.set(one, meeting).set(other, meeting);
  }

  /** The end linked to this one; −1 where it is free. */
  partnerOf(end: number): number {
    return this.#partner[end] as number;
  }

  /** The other end of a free end's chain. */
  farFrom(end: number): number {
    return this.#far[end] as number;
  }

  chainLength(end: number): number {
    return this.#lengthMm[end] as number;
  }

  point(end: number): Vec {
    return this.points[end] as Vec;
  }

  /** Where an end lies once linked: its own place unless the link moved it. */
  meetingOf(end: number): Vec {
    return this.#meeting.get(end) ?? this.point(end);
  }

  layerOf(end: number): string {
    return (this.#lines[end >> 1] as OpenLine).layer;
  }

  /** The last edge into an end where it is straight: from its other vertex to the end. */
  straightInto(end: number): readonly [from: Vec, to: Vec] | null {
    const { vertices } = this.#lines[end >> 1] as OpenLine;
    const [from, to] = end & 1 ? [vertices.at(-2), vertices.at(-1)] : [vertices[1], vertices[0]];
    const starting = end & 1 ? from : to;
    if (from === undefined || to === undefined || starting?.bulge !== 0) return null;
    return distance(from, to) > 0 ? [from, to] : null;
  }

  /** Keeps an end from ever being linked. */
  hold(end: number): void {
    this.#held.add(end);
  }

  unlinked(): number[] {
    return [...this.points.keys()].filter((end) => this.partnerOf(end) < 0);
  }

  free(): number[] {
    return this.unlinked().filter((end) => !this.#held.has(end));
  }
}
