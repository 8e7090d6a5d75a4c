import type { Contact, LegMeasure, Nearest } from './leg-measure.ts';
import { leafEdge, type OutlineTree } from './outline-tree.ts';
import { pruningMm } from './tolerances.ts';

/** Two outlines and the leg one makes past the other. */
export interface Passing {
  readonly fixed: OutlineTree;
  readonly moving: OutlineTree;
  readonly leg: LegMeasure;
}

/**
 * Finds the least distance over the leg by branch and bound, nearer branch first; only improves on `best`, and looks no
 * further once it is below `enoughMm`.
 */
export function searchNearest(passing: Passing, best: Nearest, enoughMm = 0): void {
  descend(passing, 1, 1, passing.leg.bound(1, 1), best, enoughMm);
}

function descend(passing: Passing, f: number, m: number, bound: number, best: Nearest, enoughMm: number): void {
  if (bound >= best.distanceMm - pruningMm || best.distanceMm < enoughMm) return;
  const { fixed, moving, leg } = passing;
  if (f >= fixed.leafCount && m >= moving.leafCount) {
    forEdgePairs(passing, f, m, (fixedEdge, movingEdge) => {
      measureEdges(leg, fixedEdge, movingEdge, best);
      return false;
    });
    return;
  }
  if (partsFixed(passing, f, m)) {
    const first = leg.bound(2 * f, m);
    const second = leg.bound(2 * f + 1, m);
    const swap = second < first ? 1 : 0;
    descend(passing, 2 * f + swap, m, Math.min(first, second), best, enoughMm);
    descend(passing, 2 * f + 1 - swap, m, Math.max(first, second), best, enoughMm);
    return;
  }
  const first = leg.bound(f, 2 * m);
  const second = leg.bound(f, 2 * m + 1);
  const swap = second < first ? 1 : 0;
  descend(passing, f, 2 * m + swap, Math.min(first, second), best, enoughMm);
  descend(passing, f, 2 * m + 1 - swap, Math.max(first, second), best, enoughMm);
}

/** Measures one pair of edges over the leg, and notes the pair when it is the nearest so far. */
export function measureEdges(leg: LegMeasure, fixedEdge: number, movingEdge: number, best: Nearest): void {
  const before = best.distanceMm;
  leg.measure(fixedEdge, movingEdge, best);
  if (best.distanceMm < before) best.edges = { fixed: fixedEdge, moving: movingEdge };
}

/** Every edge pair whose bound over the leg is within `withinMm`; stops when `visit` returns true. */
export function forNearPairs(
  passing: Passing,
  withinMm: number,
  visit: (fixedEdge: number, movingEdge: number) => boolean,
): boolean {
  return visitNear(passing, 1, 1, withinMm, visit);
}

function visitNear(
  passing: Passing,
  f: number,
  m: number,
  withinMm: number,
  visit: (fixedEdge: number, movingEdge: number) => boolean,
): boolean {
  const { fixed, moving, leg } = passing;
  if (leg.bound(f, m) > withinMm) return false;
  if (f >= fixed.leafCount && m >= moving.leafCount) return forEdgePairs(passing, f, m, visit);
  if (partsFixed(passing, f, m)) {
    return visitNear(passing, 2 * f, m, withinMm, visit) || visitNear(passing, 2 * f + 1, m, withinMm, visit);
  }
  return visitNear(passing, f, 2 * m, withinMm, visit) || visitNear(passing, f, 2 * m + 1, withinMm, visit);
}

/** All contacts of the two outlines on the leg, in no order. */
export function contactsOnLeg(passing: Passing): Contact[] {
  const contacts: Contact[] = [];
  forNearPairs(passing, passing.leg.slackMm, (fixedEdge, movingEdge) => {
    passing.leg.contacts(fixedEdge, movingEdge, contacts);
    return false;
  });
  return contacts;
}

/** Whether the two outlines meet at any instant of the leg; a pair that overlaps all along does not count. */
export function anyContact(passing: Passing): boolean {
  const contacts: Contact[] = [];
  return forNearPairs(passing, passing.leg.slackMm, (fixedEdge, movingEdge) => {
    passing.leg.contacts(fixedEdge, movingEdge, contacts);
    return contacts.length > 0;
  });
}

function forEdgePairs(
  { fixed, moving }: Passing,
  f: number,
  m: number,
  visit: (fixedEdge: number, movingEdge: number) => boolean,
): boolean {
  const fixedLeaf = f - fixed.leafCount;
  const movingLeaf = m - moving.leafCount;
  const fixedEnd = leafEdge(fixed, fixedLeaf + 1);
  const movingEnd = leafEdge(moving, movingLeaf + 1);
  for (let i = leafEdge(fixed, fixedLeaf); i < fixedEnd; i++) {
    for (let j = leafEdge(moving, movingLeaf); j < movingEnd; j++) if (visit(i, j)) return true;
  }
  return false;
}

/** Of two nodes, at least one no leaf, the larger is parted; a leaf never is. */
function partsFixed({ fixed, moving }: Passing, f: number, m: number): boolean {
  if (f >= fixed.leafCount) return false;
  return m >= moving.leafCount || sizeOf(fixed, f) >= sizeOf(moving, m);
}

function sizeOf({ boxes }: OutlineTree, node: number): number {
  const i = 4 * node;
  return (boxes[i + 2] as number) - (boxes[i] as number) + (boxes[i + 3] as number) - (boxes[i + 1] as number);
}
