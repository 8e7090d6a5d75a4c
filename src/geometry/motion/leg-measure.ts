import type { Rigid } from '../plane/rigid.ts';
import type { Vec } from '../plane/vec.ts';

/** One edge of each outline, by its number in the tree. */
export interface EdgePair {
  readonly fixed: number;
  readonly moving: number;
}

/** The nearest the two outlines come on a leg, as far as found: points in the fixed frame at the fraction `at`. */
export class Nearest {
  distanceMm = Number.POSITIVE_INFINITY;
  at = 0;
  fixedX = 0;
  fixedY = 0;
  movingX = 0;
  movingY = 0;
  edges: EdgePair | null = null;

  consider(distanceMm: number, at: number, fixedX: number, fixedY: number, movingX: number, movingY: number): void {
    if (distanceMm >= this.distanceMm) return;
    this.distanceMm = distanceMm;
    this.at = at;
    this.fixedX = fixedX;
    this.fixedY = fixedY;
    this.movingX = movingX;
    this.movingY = movingY;
  }
}

/** An instant at which two edges touch, and where (fixed frame, mm). */
export interface Contact {
  readonly at: number;
  readonly x: number;
  readonly y: number;
}

/** What a search needs to know of one leg between two outlines. */
export interface LegMeasure {
  /** A lower bound (mm) on the distance between two nodes at any instant of the leg. */
  bound(fixedNode: number, movingNode: number): number;
  /** Takes the least distance of two edges over the leg into `best`: both ends, and every instant between them at which it can be least. */
  measure(fixedEdge: number, movingEdge: number, best: Nearest): void;
  /** Appends every contact of two edges on the leg. */
  contacts(fixedEdge: number, movingEdge: number, out: Contact[]): void;
  /** The moving outline's place at a fraction of the leg. */
  placementAt(at: number): Rigid;
  /** How far the moving solid's point at `p` (fixed frame) travels over the whole leg, mm along its path. */
  travelMm(p: Vec): number;
  /** The fraction of the leg after which all comes round as it was, as in a turn beyond a full circle; null in others. */
  readonly roundAt: number | null;
  /** Contacts are told to this distance. */
  readonly slackMm: number;
  /** A bound on the error of every distance measured. */
  readonly toleranceMm: number;
}
