import type { Vec } from '../geometry/plane/vec.ts';
import type { Casting, Hole } from './casting.ts';
import type { Part } from './part.ts';
import type { Leg } from './path.ts';
import type { Wander } from './wander.ts';

export interface Clearances {
  readonly homeMm: number;
  readonly wayInMm: number;
  readonly rotatingMm: number;
}

export interface Cutter {
  readonly radiusMm: number;
  readonly nose: 'ball' | 'flat';
  readonly handErrorMm: number;
  readonly runOut: 'cut-past' | 'leave';
  readonly stepoverMm: number | null;
}

export type HolePair = { readonly fixed: Hole; readonly moving: Hole };

/** A fit as read, in mm and radians; the axis as a point of the fixed part's (hand-set) drawing. */
export interface Fit {
  readonly file: string;
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly axis: Vec;
  /** The hole whose middle the axis is, by its name; null where it was given as a point. */
  readonly axisHole: string | null;
  readonly dowels: readonly HolePair[];
  readonly bolts: readonly HolePair[];
  /** The way in, leg by leg, ending home; empty when only home is asked. */
  readonly legs: readonly Leg[];
  readonly engagesAtMm: number | null;
  /** How far one may stray from the way in; null where nobody says. */
  readonly wander: Wander | null;
  readonly clearance: Clearances;
  readonly depthMarginMm: number;
  readonly cut: Part | 'both';
  readonly share: number;
  readonly cutter: Cutter | null;
  /** Radii of the cutters to choose among; null: those in common use. */
  readonly cuttersMm: readonly number[] | null;
  /** Whether the edges of cuts are to be ones a grinder can follow: flats of 10 mm and more, arcs no tighter than the cutter. */
  readonly straight: boolean;
  readonly minWallMm: number | null;
  /** How far paired holes may miss before nothing is judged; null: by the limits of the trade. */
  readonly registrationMm: number | null;
  /** It is meant that the parts share no depth, never come near, or set out where they share it. */
  readonly nothingShares: boolean;
}

/** A fit with its parts, read and checked. */
export interface Job {
  readonly fit: Fit;
  readonly fixed: Casting;
  readonly moving: Casting;
  readonly rotating: readonly Casting[];
}
