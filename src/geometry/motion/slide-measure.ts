import { compose, type Rigid, rigid } from '../plane/rigid.ts';
import { squaredToSegment } from '../plane/segment.ts';
import { length, type Vec, vec } from '../plane/vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { EdgeSlot } from './edge-slot.ts';
import type { Contact, LegMeasure, Nearest } from './leg-measure.ts';
import { firstEdge, lastEdge, type OutlineTree } from './outline-tree.ts';
import { slideContacts } from './slide-contacts.ts';
import { contactSlackMm, pruningMm, roundingMm } from './tolerances.ts';

/**
 * A straight slide of the moving outline, or none at all. Everything is measured in a frame turned so that the slide
 * runs along +x: what the radius is to a turn the height y is here.
 */
export class SlideMeasure implements LegMeasure {
  readonly roundAt = null;
  readonly slackMm: number;
  readonly toleranceMm: number;
  readonly #fixed: OutlineTree;
  readonly #moving: OutlineTree;
  readonly #start: Rigid;
  readonly #by: Vec;
  readonly #lengthMm: number;
  readonly #roundingMm: number;
  readonly #toSlide: Rigid;
  readonly #movingStart: Rigid;
  readonly #f = new EdgeSlot();
  readonly #m = new EdgeSlot();
  readonly #pair = new ClosestPair();
  readonly #candidates: number[] = [];
  readonly #heights = { f: new Float64Array(6), m: new Float64Array(6) };

  /** `deviationMm`: by how much the motion meant may depart from this slide. */
  constructor(fixed: OutlineTree, moving: OutlineTree, start: Rigid, by: Vec, deviationMm = 0) {
    this.#fixed = fixed;
    this.#moving = moving;
    this.#start = start;
    this.#by = by;
    this.#lengthMm = length(by);
    this.#toSlide = rigid(this.#lengthMm === 0 ? 0 : -Math.atan2(by.y, by.x), vec(0, 0));
    this.#movingStart = compose(this.#toSlide, start);
    const reachMm = fixed.reachMm + moving.reachMm + length(start.shift) + this.#lengthMm;
    this.slackMm = contactSlackMm(reachMm);
    this.#roundingMm = roundingMm(reachMm);
    this.toleranceMm = this.#roundingMm + pruningMm + fixed.deviationMm + moving.deviationMm + deviationMm;
  }

  placementAt(at: number): Rigid {
    if (at === 0) return this.#start;
    return { ...this.#start, shift: vec(this.#start.shift.x + at * this.#by.x, this.#start.shift.y + at * this.#by.y) };
  }

  travelMm(): number {
    return this.#lengthMm;
  }

  bound(fixedNode: number, movingNode: number): number {
    const boxes = this.#boxGap(fixedNode, movingNode);
    return this.#lengthMm > 0 ? boxes : Math.max(boxes, this.#chordGap(fixedNode, movingNode));
  }

  /** Gap between the nodes' chords, less what their edges leave them by; for outlines that stand still. */
  #chordGap(fixedNode: number, movingNode: number): number {
    const f = this.#fixed.ends;
    const m = this.#moving.ends;
    const fa = 4 * firstEdge(this.#fixed, fixedNode);
    const fb = 4 * lastEdge(this.#fixed, fixedNode) + 2;
    const ma = 4 * firstEdge(this.#moving, movingNode);
    const mb = 4 * lastEdge(this.#moving, movingNode) + 2;
    const { cos, sin, shift } = this.#start;
    const max = m[ma] as number;
    const may = m[ma + 1] as number;
    const mbx = m[mb] as number;
    const mby = m[mb + 1] as number;
    const gap = segmentGap(
      f[fa] as number,
      f[fa + 1] as number,
      f[fb] as number,
      f[fb + 1] as number,
      cos * max - sin * may + shift.x,
      sin * max + cos * may + shift.y,
      cos * mbx - sin * mby + shift.x,
      sin * mbx + cos * mby + shift.y,
    );
    const reach = (this.#fixed.reaches[fixedNode] as number) + (this.#moving.reaches[movingNode] as number);
    return gap - reach - this.#roundingMm;
  }

  /** Gap between the nodes' boxes, each carried into the slide's frame, the moving one swept along x. */
  #boxGap(fixedNode: number, movingNode: number): number {
    const f = this.#fixed.boxes;
    const m = this.#moving.boxes;
    const i = 4 * fixedNode;
    const j = 4 * movingNode;
    const toF = this.#toSlide;
    const toM = this.#movingStart;
    const fx = ((f[i] as number) + (f[i + 2] as number)) / 2;
    const fy = ((f[i + 1] as number) + (f[i + 3] as number)) / 2;
    const fw = ((f[i + 2] as number) - (f[i] as number)) / 2;
    const fh = ((f[i + 3] as number) - (f[i + 1] as number)) / 2;
    const mx = ((m[j] as number) + (m[j + 2] as number)) / 2;
    const my = ((m[j + 1] as number) + (m[j + 3] as number)) / 2;
    const mw = ((m[j + 2] as number) - (m[j] as number)) / 2;
    const mh = ((m[j + 3] as number) - (m[j + 1] as number)) / 2;
    const half = this.#lengthMm / 2;
    const along = Math.abs(toM.cos * mx - toM.sin * my + toM.shift.x + half - (toF.cos * fx - toF.sin * fy));
    const across = Math.abs(toM.sin * mx + toM.cos * my + toM.shift.y - (toF.sin * fx + toF.cos * fy));
    const fCos = Math.abs(toF.cos);
    const fSin = Math.abs(toF.sin);
    const mCos = Math.abs(toM.cos);
    const mSin = Math.abs(toM.sin);
    const dx = along - half - (fCos * fw + fSin * fh) - (mCos * mw + mSin * mh);
    const dy = across - (fSin * fw + fCos * fh) - (mSin * mw + mCos * mh);
    if (dx <= 0) return Math.max(0, dy - this.#roundingMm);
    if (dy <= 0) return Math.max(0, dx - this.#roundingMm);
    return Math.max(0, Math.sqrt(dx * dx + dy * dy) - this.#roundingMm);
  }

  measure(fixedEdge: number, movingEdge: number, best: Nearest): void {
    this.#f.load(this.#fixed, fixedEdge, this.#toSlide);
    this.#m.load(this.#moving, movingEdge, this.#movingStart);
    this.#measureAt(0, best);
    if (this.#lengthMm === 0) return;
    this.#measureAlignments(best);
    shiftAlong(this.#m, this.#lengthMm);
    this.#measureAt(1, best);
  }

  #measureAt(at: number, best: Nearest): void {
    const pair = this.#pair;
    pair.reset();
    pair.measure(this.#f, this.#m);
    if (pair.distanceMm < best.distanceMm) this.#take(pair.distanceMm, at, pair.px, pair.py, pair.qx, pair.qy, best);
  }

  /** Level-with-one-another instants: vertices, and arcs' highest and lowest points. */
  #measureAlignments(best: Nearest): void {
    const { f, m } = this.#heights;
    const fCount = criticalHeights(this.#f, f);
    const mCount = criticalHeights(this.#m, m);
    for (let i = 0; i < fCount; i += 2) {
      for (let j = 0; j < mCount; j += 2) {
        const fx = f[i] as number;
        const fy = f[i + 1] as number;
        const my = m[j + 1] as number;
        const gap = Math.abs(fy - my);
        const by = fx - (m[j] as number);
        if (gap < best.distanceMm && by >= 0 && by <= this.#lengthMm) {
          this.#take(gap, by / this.#lengthMm, fx, fy, fx, my, best);
        }
      }
    }
  }

  #take(gap: number, at: number, fx: number, fy: number, mx: number, my: number, best: Nearest): void {
    const { cos, sin } = this.#toSlide;
    best.consider(gap, at, cos * fx + sin * fy, cos * fy - sin * fx, cos * mx + sin * my, cos * my - sin * mx);
  }

  contacts(fixedEdge: number, movingEdge: number, out: Contact[]): void {
    const candidates = this.#candidates;
    candidates.length = 0;
    this.#f.load(this.#fixed, fixedEdge, this.#toSlide);
    this.#m.load(this.#moving, movingEdge, this.#movingStart);
    slideContacts(this.#f, this.#m, this.slackMm, candidates);
    for (const by of candidates) {
      if (by < -this.slackMm || by > this.#lengthMm + this.slackMm) continue;
      this.#confirm(Math.min(Math.max(by, 0), this.#lengthMm), movingEdge, out);
    }
  }

  #confirm(by: number, movingEdge: number, out: Contact[]): void {
    const pair = this.#pair;
    this.#m.load(this.#moving, movingEdge, this.#movingStart);
    shiftAlong(this.#m, by);
    pair.reset();
    pair.measure(this.#f, this.#m);
    if (pair.distanceMm > this.slackMm) return;
    const { cos, sin } = this.#toSlide;
    const at = this.#lengthMm === 0 ? 0 : by / this.#lengthMm;
    out.push({ at, x: cos * pair.px + sin * pair.py, y: cos * pair.py - sin * pair.px });
  }
}

/** Distance between two segments; 0 where they cross. */
function segmentGap(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): number {
  const c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
  if (c > 0 !== d > 0) {
    const a = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
    const b = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
    if (a > 0 !== b > 0) return 0;
  }
  return Math.sqrt(
    Math.min(
      squaredToSegment(ax, ay, cx, cy, dx, dy),
      squaredToSegment(bx, by, cx, cy, dx, dy),
      squaredToSegment(cx, cy, ax, ay, bx, by),
      squaredToSegment(dx, dy, ax, ay, bx, by),
    ),
  );
}

function shiftAlong(slot: EdgeSlot, by: number): void {
  slot.ax += by;
  slot.bx += by;
  slot.cx += by;
}

/** Writes the x and y of an edge's height-critical points into `out`; returns how many numbers. */
function criticalHeights(slot: EdgeSlot, out: Float64Array): number {
  out[0] = slot.ax;
  out[1] = slot.ay;
  let count = 2;
  if (!slot.arc) return count;
  for (let side = -1; side <= 1; side += 2) {
    const y = slot.cy + side * slot.radius;
    if (!slot.spans(slot.cx, y)) continue;
    out[count++] = slot.cx;
    out[count++] = y;
  }
  return count;
}
