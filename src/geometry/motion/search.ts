import type { Contact, LegMeasure, Nearest } from './leg-measure.ts';
import {
  endEdge,
  firstEdge,
  isLeaf,
  leftOf,
  maxX,
  maxY,
  minX,
  minY,
  type OutlineTree,
  rightOf,
  rootNode,
  siblingOf,
} from './outline-tree.ts';
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
  descend(passing, rootNode, rootNode, passing.leg.bound(rootNode, rootNode), best, enoughMm);
}

function descend(passing: Passing, f: number, m: number, bound: number, best: Nearest, enoughMm: number): void {
  if (bound >= best.distanceMm - pruningMm || best.distanceMm < enoughMm) return;
  const { fixed, moving, leg } = passing;
  if (isLeaf(fixed, f) && isLeaf(moving, m)) {
    forEdgePairs(passing, f, m, (fixedEdge, movingEdge) => {
      measureEdges(leg, fixedEdge, movingEdge, best);
      return false;
    });
    return;
  }
  if (partsFixed(passing, f, m)) {
    const first = leg.bound(leftOf(f), m);
    const second = leg.bound(rightOf(f), m);
    const near = second < first ? rightOf(f) : leftOf(f);
    descend(passing, near, m, Math.min(first, second), best, enoughMm);
    descend(passing, siblingOf(near), m, Math.max(first, second), best, enoughMm);
    return;
  }
  const first = leg.bound(f, leftOf(m));
  const second = leg.bound(f, rightOf(m));
  const near = second < first ? rightOf(m) : leftOf(m);
  descend(passing, f, near, Math.min(first, second), best, enoughMm);
  descend(passing, f, siblingOf(near), Math.max(first, second), best, enoughMm);
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
  return visitNear(passing, rootNode, rootNode, withinMm, visit);
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
  if (isLeaf(fixed, f) && isLeaf(moving, m)) return forEdgePairs(passing, f, m, visit);
  if (partsFixed(passing, f, m)) {
    return visitNear(passing, leftOf(f), m, withinMm, visit) || visitNear(passing, rightOf(f), m, withinMm, visit);
  }
  return visitNear(passing, f, leftOf(m), withinMm, visit) || visitNear(passing, f, rightOf(m), withinMm, visit);
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
  const fixedEnd = endEdge(fixed, f);
  const movingEnd = endEdge(moving, m);
  for (let i = firstEdge(fixed, f); i < fixedEnd; i++) {
    for (let j = firstEdge(moving, m); j < movingEnd; j++) if (visit(i, j)) return true;
  }
  return false;
}

/** Of two nodes, at least one no leaf, the larger is parted; a leaf never is. */
function partsFixed({ fixed, moving }: Passing, f: number, m: number): boolean {
  if (isLeaf(fixed, f)) return false;
  return isLeaf(moving, m) || sizeOf(fixed, f) >= sizeOf(moving, m);
}

const sizeOf = (tree: OutlineTree, node: number): number =>
  maxX(tree, node) - minX(tree, node) + maxY(tree, node) - minY(tree, node);
