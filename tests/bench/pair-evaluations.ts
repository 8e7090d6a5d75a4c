import { type Contact, type LegMeasure, Nearest } from '../../src/geometry/motion/leg-measure.ts';
import { measureOf } from '../../src/geometry/motion/leg-of-motion.ts';
import type { Motion } from '../../src/geometry/motion/motion.ts';
import type { OutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { contactsOnLeg, searchNearest } from '../../src/geometry/motion/search.ts';
import { identity, type Rigid } from '../../src/geometry/plane/rigid.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';

/**
 * How many pairs a search looks at, of nodes and of edges, to find the least distance over a motion and to rule
 * contact out: what the search costs, whatever machine it runs on.
 */
export function pairEvaluations(fixed: OutlineTree, moving: OutlineTree, motion: Motion): number {
  const leg = new CountingMeasure(measureOf(fixed, moving, identity, motion));
  searchNearest({ fixed, moving, leg }, new Nearest());
  contactsOnLeg({ fixed, moving, leg });
  return leg.count;
}

/** A measure that counts the pairs it is asked about. */
class CountingMeasure implements LegMeasure {
  count = 0;
  readonly roundAt: number | null;
  readonly slackMm: number;
  readonly toleranceMm: number;
  readonly #leg: LegMeasure;

  constructor(leg: LegMeasure) {
    this.#leg = leg;
    this.slackMm = leg.slackMm;
    this.toleranceMm = leg.toleranceMm;
    this.roundAt = leg.roundAt;
  }

  bound(fixedNode: number, movingNode: number): number {
    this.count++;
    return this.#leg.bound(fixedNode, movingNode);
  }

  measure(fixedEdge: number, movingEdge: number, best: Nearest): void {
    this.count++;
    this.#leg.measure(fixedEdge, movingEdge, best);
  }

  contacts(fixedEdge: number, movingEdge: number, out: Contact[]): void {
    this.count++;
    this.#leg.contacts(fixedEdge, movingEdge, out);
  }

  travelMm(p: Vec): number {
    return this.#leg.travelMm(p);
  }

  placementAt(at: number): Rigid {
    return this.#leg.placementAt(at);
  }
}
