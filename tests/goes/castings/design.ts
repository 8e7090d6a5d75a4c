import type { FitFile } from '../../../src/files/fit-file.ts';
import type { Polygon } from '../../../src/geometry/polygons/polygons.ts';

/** Outlines over one range of depth, before they are cast. */
export interface Layer {
  readonly id: string;
  readonly depth: readonly [from: number, to: number];
  readonly outlines: readonly Polygon[];
}

/** A pair as it was drawn: fixed metal that may be cut, hollows behind it, what comes past, and how. */
export interface Design {
  readonly fixed: readonly Layer[];
  readonly hollows: readonly Layer[];
  readonly moving: readonly Layer[];
  readonly offerUp: NonNullable<FitFile['offerUp']>;
}

/** The wall to keep behind a cut, mm; common practice. */
export const keepWallMm = 4;
