import { apply, compose, identity, inverse, type Rigid, rigid, rotationAbout } from '../plane/rigid.ts';
import { distance, length, scale, type Vec } from '../plane/vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { EdgeSlot } from './edge-slot.ts';
import type { Contact, LegMeasure, Nearest } from './leg-measure.ts';
import type { OutlineTree } from './outline-tree.ts';
import {
  angleAt,
  facingAt,
  firstCritical,
  isMaximum,
  isMinimum,
  type PolarFrame,
  polarFrame,
  positiveRad,
  radiusAt,
  wrapRad,
} from './polar-frame.ts';
import { contactSlackMm, pruningMm, roundingMm, turnSlackRad } from './tolerances.ts';
import { turnContacts } from './turn-contacts.ts';

/**
 * A turn of the moving outline about a pole, by any angle.
 *
 * Least distance: at an instant between the ends at which a distance is least and not zero, the two points stand in
 * line with the pole on one side of it, one a local minimum of its outline's radius and the other a local maximum;
 * so both ends and every such meeting are measured. Contacts come from `turnContacts`.
 */
export class TurnMeasure implements LegMeasure {
  readonly roundAt: number | null;
  readonly slackMm: number;
  readonly toleranceMm: number;
  readonly #fixed: OutlineTree;
  readonly #moving: OutlineTree;
  readonly #start: Rigid;
  readonly #end: Rigid;
  readonly #pole: Vec;
  readonly #angleRad: number;
  /** The least angle the moving outline has over the leg, in its own polar frame, and the room to the greatest. */
  readonly #fromRad: number;
  readonly #spanRad: number;
  readonly #fixedFrame: PolarFrame;
  readonly #movingFrame: PolarFrame;
  readonly #toFixedPole: Rigid;
  readonly #toMovingPole: Rigid;
  readonly #f = new EdgeSlot();
  readonly #m = new EdgeSlot();
  readonly #pair = new ClosestPair();
  readonly #candidates: number[] = [];

  constructor(fixed: OutlineTree, moving: OutlineTree, start: Rigid, pole: Vec, angleRad: number) {
    const movingPole = apply(inverse(start), pole);
    this.#fixed = fixed;
    this.#moving = moving;
    this.#start = start;
    this.#pole = pole;
    this.#angleRad = angleRad;
    this.#end = this.placementAt(1);
    this.#fromRad = start.turnRad + Math.min(0, angleRad);
    this.#spanRad = Math.abs(angleRad);
    this.roundAt = this.#spanRad > 2 * Math.PI ? (2 * Math.PI) / this.#spanRad : null;
    this.#fixedFrame = polarFrame(fixed, pole);
    this.#movingFrame = polarFrame(moving, movingPole);
    this.#toFixedPole = rigid(0, scale(pole, -1));
    this.#toMovingPole = rigid(0, scale(movingPole, -1));
    const reachMm = fixed.reachMm + length(pole) + moving.reachMm + length(movingPole);
    this.slackMm = contactSlackMm(reachMm);
    this.toleranceMm = roundingMm(reachMm) + pruningMm + fixed.deviationMm + moving.deviationMm;
  }

  placementAt(at: number): Rigid {
    return at === 0 ? this.#start : compose(rotationAbout(this.#pole, this.#angleRad * at), this.#start);
  }

  travelMm(p: Vec): number {
    return this.#spanRad * distance(p, this.#pole);
  }

  /** Least distance between two sectors, the moving one swept; (r − s)² + 4rs·sin²(½δ) between points at r and s. */
  bound(fixedNode: number, movingNode: number): number {
    const f = this.#fixedFrame.nodes;
    const m = this.#movingFrame.nodes;
    const i = 4 * fixedNode;
    const j = 4 * movingNode;
    const fMin = f[i] as number;
    const fMax = f[i + 1] as number;
    const mMin = m[j] as number;
    const mMax = m[j + 1] as number;
    const halfSpan = this.#spanRad / 2;
    const middle = (m[j + 2] as number) + this.#fromRad + halfSpan;
    const apart = Math.abs(wrapRad(middle - (f[i + 2] as number)));
    const angle = apart - halfSpan - (f[i + 3] as number) - (m[j + 3] as number);
    if (angle <= 0) return Math.max(0, fMin - mMax, mMin - fMax);
    const cos = Math.max(0, Math.cos(angle));
    const mNear = Math.min(Math.max(fMin * cos, mMin), mMax);
    const fNear = Math.min(Math.max(mMin * cos, fMin), fMax);
    const haver = 4 * Math.sin(angle / 2) ** 2;
    const a = (fMin - mNear) ** 2 + fMin * mNear * haver;
    const b = (mMin - fNear) ** 2 + mMin * fNear * haver;
    return Math.sqrt(Math.min(a, b));
  }

  measure(fixedEdge: number, movingEdge: number, best: Nearest): void {
    this.#f.load(this.#fixed, fixedEdge, identity);
    this.#measureAt(0, this.#start, movingEdge, best);
    if (this.#spanRad === 0) return;
    this.#measureAt(1, this.#end, movingEdge, best);
    this.#measureAlignments(fixedEdge, movingEdge, best);
  }

  #measureAt(at: number, placement: Rigid, movingEdge: number, best: Nearest): void {
    const pair = this.#pair;
    this.#m.load(this.#moving, movingEdge, placement);
    pair.reset();
    pair.measure(this.#f, this.#m);
    best.consider(pair.distanceMm, at, pair.px, pair.py, pair.qx, pair.qy);
  }

  #measureAlignments(fixedEdge: number, movingEdge: number, best: Nearest): void {
    const fixed = this.#fixedFrame;
    const moving = this.#movingFrame;
    for (let i = firstCritical(fixed, fixedEdge); i < firstCritical(fixed, fixedEdge + 1); i++) {
      const facing = facingAt(fixed, i);
      if (facing === 0) continue;
      // a minimum of one faces a maximum of the other
      const wanted = (facing & isMinimum ? isMaximum : 0) | (facing & isMaximum ? isMinimum : 0);
      for (let j = firstCritical(moving, movingEdge); j < firstCritical(moving, movingEdge + 1); j++) {
        if ((facingAt(moving, j) & wanted) === 0) continue;
        const gap = Math.abs(radiusAt(fixed, i) - radiusAt(moving, j));
        if (gap < best.distanceMm) this.#considerAlignment(i, j, gap, best);
      }
    }
  }

  #considerAlignment(i: number, j: number, gap: number, best: Nearest): void {
    const angle = angleAt(this.#fixedFrame, i);
    const turn = positiveRad(angle - angleAt(this.#movingFrame, j) - this.#fromRad);
    if (turn > this.#spanRad) return;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const f = radiusAt(this.#fixedFrame, i);
    const m = radiusAt(this.#movingFrame, j);
    const { x, y } = this.#pole;
    best.consider(gap, this.#fractionOf(turn), x + f * cos, y + f * sin, x + m * cos, y + m * sin);
  }

  #fractionOf(turn: number): number {
    const fraction = Math.min(1, turn / this.#spanRad);
    return this.#angleRad < 0 ? 1 - fraction : fraction;
  }

  contacts(fixedEdge: number, movingEdge: number, out: Contact[]): void {
    const candidates = this.#candidates;
    candidates.length = 0;
    this.#f.load(this.#fixed, fixedEdge, this.#toFixedPole);
    this.#m.load(this.#moving, movingEdge, this.#toMovingPole);
    turnContacts(this.#f, this.#m, this.slackMm, candidates);
    if (candidates.length === 0) return;
    this.#f.load(this.#fixed, fixedEdge, identity);
    for (const angle of candidates) {
      // a turn beyond a full circle comes by more than once
      let turn = positiveRad(angle - this.#fromRad);
      // an instant a rounding before the start belongs to it
      if (turn > 2 * Math.PI - turnSlackRad) turn -= 2 * Math.PI;
      if (turn > this.#spanRad + turnSlackRad || !this.#touchesAt(this.#fractionWithin(turn), movingEdge)) continue;
      const { px: x, py: y } = this.#pair;
      for (; turn <= this.#spanRad + turnSlackRad; turn += 2 * Math.PI)
        out.push({ at: this.#fractionWithin(turn), x, y });
    }
  }

  #fractionWithin(turn: number): number {
    return this.#fractionOf(Math.min(Math.max(turn, 0), this.#spanRad));
  }

  /** Whether the edges of the two slots touch; the place stays in the pair. */
  #touchesAt(at: number, movingEdge: number): boolean {
    this.#m.load(this.#moving, movingEdge, this.placementAt(at));
    this.#pair.reset();
    this.#pair.measure(this.#f, this.#m);
    return this.#pair.distanceMm <= this.slackMm;
  }
}
