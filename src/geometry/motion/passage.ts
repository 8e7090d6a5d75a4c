import { apply, inverse, type Rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { type Contact, Nearest } from './leg-measure.ts';
import { measureOf } from './leg-of-motion.ts';
import { isMotionless, type Motion } from './motion.ts';
import type { OutlineTree } from './outline-tree.ts';
import { overlapOf, startsInside } from './overlap.ts';
import { anyContact, contactsOnLeg, type Passing, searchNearest } from './search.ts';
import { SlideMeasure } from './slide-measure.ts';
import { instant, leastToleranceMm } from './tolerances.ts';

/** Where and when two outlines are nearest or touch: points in the fixed frame, mm, at a fraction of the motion. */
export interface Witness {
  readonly at: number;
  readonly fixedAt: Vec;
  readonly movingAt: Vec;
}

/** Part of a motion during which two solids overlap, and where the outlines touch as it begins. */
export interface OverlapInterval {
  readonly from: number;
  readonly to: number;
  readonly where: Vec;
}

/** How two solids pass one another on one rigid motion. */
export interface Passage {
  /** Deeper than the tolerance at some instant; never; or boundaries that meet without doing so. */
  readonly state: 'clear' | 'touches' | 'fouls';
  /** Least distance in mm, 0 unless clear; null when either solid is empty. */
  readonly distanceMm: number | null;
  /** The error of `distanceMm`, and the depth to which touching is told from fouling. */
  readonly toleranceMm: number;
  /** The nearest instant when clear, the first touch when not. */
  readonly nearest: Witness | null;
  /** The complete set of overlapping parts, in order. */
  readonly overlaps: readonly OverlapInterval[];
}

/**
 * How a moving solid, placed by `start`, passes a fixed one on a motion: clearance and contact proved for every
 * instant. At a first contact after a clear start the outlines meet at a vertex or tangentially; these meetings part
 * the motion into pieces in which nothing changes, so each piece is judged once, at its middle.
 */
export function passage(fixed: OutlineTree, moving: OutlineTree, start: Rigid, motion: Motion): Passage {
  const leg = measureOf(fixed, moving, start, motion);
  const toleranceMm = Math.max(leastToleranceMm, leg.toleranceMm);
  if (fixed.edgeCount === 0 || moving.edgeCount === 0) {
    return { state: 'clear', distanceMm: null, toleranceMm, nearest: null, overlaps: [] };
  }
  const passing = { fixed, moving, leg };
  const inside = startsInside(fixed, moving, start);
  const best = new Nearest();
  if (!inside) searchNearest(passing, best);
  if (!inside && best.distanceMm > toleranceMm && !anyContact(passing)) {
    return { state: 'clear', distanceMm: best.distanceMm, toleranceMm, nearest: witnessOf(best), overlaps: [] };
  }
  return meeting(passing, best, toleranceMm, isMotionless(motion));
}

function meeting(passing: Passing, best: Nearest, toleranceMm: number, motionless: boolean): Passage {
  const contacts = motionless ? [] : contactsOnLeg(passing).sort((a, b) => a.at - b.at);
  const overlaps = overlapIntervals(passing, contacts, toleranceMm);
  // a point of an outline that lies on the other may have been told either way: then nothing has been measured yet
  if (best.distanceMm === Number.POSITIVE_INFINITY) searchNearest(passing, best);
  const first = overlaps[0];
  if (first) {
    const nearest = { at: first.from, fixedAt: first.where, movingAt: first.where };
    return { state: 'fouls', distanceMm: 0, toleranceMm, nearest, overlaps };
  }
  const contact = contacts[0];
  const nearest = contact
    ? { at: contact.at, fixedAt: vec(contact.x, contact.y), movingAt: vec(contact.x, contact.y) }
    : witnessOf(best);
  return { state: 'touches', distanceMm: 0, toleranceMm, nearest, overlaps };
}

function overlapIntervals(passing: Passing, contacts: readonly Contact[], toleranceMm: number): OverlapInterval[] {
  const overlaps: { from: number; to: number; where: Vec }[] = [];
  const probe = new OverlapProbe(passing, toleranceMm);
  let from: Contact | null = null;
  for (const to of [...contacts, null]) {
    const start: number = from?.at ?? 0;
    const end = to?.at ?? 1;
    if (end - start > instant || contacts.length === 0) {
      const overlapped = probe.overlapsWithin(start, contacts.length === 0 ? start : end);
      const last = overlaps.at(-1);
      if (overlapped && last && start - last.to <= instant) last.to = end;
      else if (overlapped)
        overlaps.push({ from: start, to: end, where: from ? vec(from.x, from.y) : startPoint(passing, toleranceMm) });
    }
    if (to && (!from || to.at - from.at > instant)) from = to;
  }
  return overlaps;
}

/** A point common to both solids as the motion begins, where it begins overlapped. */
function startPoint({ fixed, moving, leg }: Passing, toleranceMm: number): Vec {
  const start = leg.placementAt(0);
  const overlap = overlapOf(fixed, moving, start, toleranceMm);
  if (overlap) return overlap.point;
  const best = new Nearest();
  searchNearest({ fixed, moving, leg: new SlideMeasure(fixed, moving, start, vec(0, 0)) }, best);
  return vec(best.fixedX, best.fixedY);
}

/**
 * Finds overlaps one after another. A point so many mm deep stays inside until it has travelled as far; where the last
 * one was found is the first place to look for the next.
 */
class OverlapProbe {
  readonly #passing: Passing;
  readonly #depthMm: number;
  #hint: Vec | null = null;
  #sureUntil = 0;
  /** What was told before, in order, and the first of it that has not come round yet. */
  readonly #told: { readonly from: number; readonly to: number; readonly overlaps: boolean }[] = [];
  #round = 0;

  constructor(passing: Passing, depthMm: number) {
    this.#passing = passing;
    this.#depthMm = depthMm;
  }

  /** Between two neighbouring events, asked for in their order; an overlap too shallow at the middle may be deeper beside it. */
  overlapsWithin(from: number, to: number): boolean {
    const { roundAt } = this.#passing.leg;
    if (roundAt === null) return this.#looksWithin(from, to);
    const overlaps = this.#comeRound(from - roundAt, to - roundAt) ?? this.#looksWithin(from, to);
    this.#told.push({ from, to, overlaps });
    return overlaps;
  }

  /** What was told a full turn before, of the same piece to within an instant; null where none was. */
  #comeRound(from: number, to: number): boolean | null {
    const told = this.#told;
    while (this.#round < told.length && (told[this.#round]?.from ?? 0) < from - instant) this.#round++;
    const before = told[this.#round];
    const isSame = before && Math.abs(before.from - from) <= instant && Math.abs(before.to - to) <= instant;
    return isSame ? before.overlaps : null;
  }

  #looksWithin(from: number, to: number): boolean {
    const middle = (from + to) / 2;
    if (middle < this.#sureUntil || this.#overlapsAt(middle)) return true;
    if (from === to) return false;
    if (this.#overlapsAt((from + middle) / 2) || this.#overlapsAt((middle + to) / 2)) return true;
    // depth makes no jumps: what is deep at an event, or as the motion ends, is deep beside it
    return this.#overlapsAt(from) || this.#overlapsAt(to);
  }

  #overlapsAt(at: number): boolean {
    const { fixed, moving, leg } = this.#passing;
    const placement = leg.placementAt(at);
    const overlap = overlapOf(fixed, moving, placement, this.#depthMm, this.#hint);
    if (overlap === null) return false;
    this.#hint = apply(inverse(placement), overlap.point);
    this.#sureUntil = at + (overlap.depthMm - this.#depthMm) / leg.travelMm(overlap.point);
    return true;
  }
}

export const witnessOf = (best: Nearest): Witness => ({
  at: best.at,
  fixedAt: vec(best.fixedX, best.fixedY),
  movingAt: vec(best.movingX, best.movingY),
});
