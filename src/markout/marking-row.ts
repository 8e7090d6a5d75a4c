import type { Vec } from '../geometry/plane/vec.ts';
import type { DepthRange } from '../job/casting.ts';

/** A distance that finds a place: from the centre of a dowel of the part that is cut, or of a hole where it has none. */
export interface Divider {
  readonly from: string;
  /** In plan, square to the crank axis. */
  readonly mm: number;
  /**
   * What dividers are set to: through space, from the centre of the dowel's end or of the hole where it opens, to the place
   * at the end of the band nearer the face. Null where nobody said how proud the dowel stands.
   */
  readonly setMm: number | null;
}

/** The wall at a place. */
export interface WallLeft {
  readonly hollow: string;
  /** From the planned line, nothing taken off. */
  readonly nominalMm: number;
  /** From the last line, the hollow's own error and the hand's taken off. */
  readonly wallMm: number;
}

/** A row of the marking-out table: one place on the edge a cut leaves, and how to find it on the casting. */
export interface MarkingRow {
  /** Counts through the whole table from 1; the templates carry the same numbers. */
  readonly place: number;
  /** Which of the bands that are marked out, counted from 0. */
  readonly band: number;
  readonly section: string;
  /** From the face of the part that is cut; null through every depth. */
  readonly depth: DepthRange | null;
  /** Counts the edges the cut leaves in this band from 1. */
  readonly edge: number;
  /** Why there: `wall` is where the edge comes nearest to a hollow, `step` is every 10 mm. */
  readonly kind: PlaceKind;
  /** Whether this edge takes off a whole tip: what comes off is then its length, and there is no outside to measure from. */
  readonly wholeTip: boolean;
  /** Along the edge from its first place, mm. */
  readonly alongMm: number;
  /** On the planned line, joint frame, mm. */
  readonly at: Vec;
  /** From the crank, anticlockwise from 3 o'clock in (−π, π], looking at the mating face of the part that is cut. */
  readonly angleRad: number;
  readonly radiusMm: number;
  /** Null without two holes. */
  readonly dividers: readonly [Divider, Divider] | null;
  /** Take off to each line, square to the present outside nearest to this place, mm. */
  readonly firstMm: number;
  readonly plannedMm: number;
  readonly lastMm: number;
  /** To the nearest hollow; null where none is in reach. */
  readonly wall: WallLeft | null;
}

export type PlaceKind = 'end' | 'corner' | 'deepest' | 'wall' | 'step';

/** The places of one part's cut. */
export type MarkingTable = readonly MarkingRow[];
