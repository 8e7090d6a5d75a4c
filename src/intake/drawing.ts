import type { Vec } from '../geometry/plane/vec.ts';
import type { HoleKind } from '../job/casting.ts';
import type { LengthUnit } from './length-unit.ts';
import type { Shape } from './outlines/shape.ts';

export interface DrawnShape {
  readonly shape: Shape;
  readonly layer: string;
  /** Where in the file it stands, such as `line 120`. */
  readonly place: string;
}

/** A hole that the source itself names; lengths in its units. */
export interface NamedHole {
  readonly id: string;
  /** Null where the source does not say. */
  readonly kind: HoleKind | null;
  /** Where in the file it stands, such as `line 120`. */
  readonly place: string;
  readonly at: Vec;
  readonly diameter: number | null;
  readonly proud: number | null;
  readonly thread: string | null;
  readonly depth: readonly [from: number, to: number] | null;
  readonly keepWall: number | null;
  readonly mayBreak: boolean | null;
}

/** What a source itself says of a hollow; null where it says nothing. */
export interface HollowFacts {
  readonly depth: readonly [from: number, to: number] | null;
  readonly keepWall: number | null;
  readonly traceError: number | null;
}

/** A hollow that the source itself names; lengths in its units. */
export interface NamedHollow extends HollowFacts {
  readonly id: string;
  readonly shapes: readonly DrawnShape[];
}

/** A region not to be cut that the source itself names; lengths in its units. */
export interface NamedDoNotCut {
  readonly id: string;
  readonly depth: readonly [from: number, to: number] | null;
  readonly shapes: readonly DrawnShape[];
}

/** How thick the metal is at a place, as the source says it was measured; lengths in its units. */
export interface NamedWallReading {
  readonly at: Vec;
  readonly depth: number;
  readonly wall: number;
  readonly error: number | null;
}

/** What a source itself says of a section; null where it says nothing. */
export interface SectionFacts {
  readonly depth: readonly [from: number, to: number] | null;
  readonly traceError: number | null;
  readonly gotBy: string | null;
  readonly mayCut: boolean | null;
  readonly note: string | null;
}

/** Something of the file that the reader of the outlines must know. */
export interface Note {
  readonly code: string;
  readonly text: string;
}

/**
 * A file as read, whatever its kind: y up, every length in its `unit` (null: the file names none). Its layers are to
 * become sections and holes; where `facts` has a layer, that layer is a section by the file's own word.
 */
export interface Drawing {
  readonly unit: LengthUnit | null;
  /** Without a unit its lengths are pixels of a picture. */
  readonly inPixels: boolean;
  readonly shapes: readonly DrawnShape[];
  readonly holes: readonly NamedHole[];
  readonly hollows: readonly NamedHollow[];
  readonly doNotCut: readonly NamedDoNotCut[];
  readonly wallReadings: readonly NamedWallReading[];
  readonly facts: ReadonlyMap<string, SectionFacts>;
  readonly notes: readonly Note[];
}
