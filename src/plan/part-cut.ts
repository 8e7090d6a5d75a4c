import type { Vec } from '../geometry/plane/vec.ts';
import type { Polygons } from '../geometry/polygons/polygons.ts';
import type { Casting, DepthRange } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import type { BandCut } from './bands/cut-band.ts';
import type { CutLines } from './bands/cut-lines.ts';
import type { SeveredPiece } from './bands/severed-pieces.ts';
import type { CutterResult } from './cutter/cutter-result.ts';
import type { CutterWay } from './cutter/cutter-shape.ts';
import type { StraightResult } from './cutter/straight-result.ts';
import type { ThinPlace } from './walls/thin-places.ts';
import type { ReadWall, UnmeasuredCut } from './walls/wall-readings.ts';
import type { WallBehind } from './walls/walls.ts';

/** One piece of metal to come off, by its area and its centre of area in the joint frame, mm. */
export interface PieceFigures {
  readonly areaMm2: number;
  readonly at: Vec;
}

/** What is said of a band of a cut; depths in mm from the face of the part that is cut. */
export interface BandFigures {
  /** Null for a section that reaches through every depth. */
  readonly depth: DepthRange | null;
  /** The depth never to go past: the errors of depth at their worst. */
  readonly lastDepth: DepthRange | null;
  /** Of the planned cut, and of what each line takes off. */
  readonly areaMm2: number;
  readonly firstAreaMm2: number;
  readonly lastAreaMm2: number;
  /** How deep the cut goes at its deepest; null where the section has nothing left over this depth. */
  readonly takeOff: BandCut['takeOff'];
  /** The separate pieces of the planned cut, the largest first. */
  readonly pieces: readonly PieceFigures[];
  /** What the clearance alone would take, what the cutter takes beyond it, and a straight edge beyond both. */
  readonly neededAreaMm2: number;
  readonly extraAreaMm2: number;
  readonly straightExtraAreaMm2: number | null;
  /** How it is shaped for the cutter; null without one. */
  readonly cutterWay: CutterWay | null;
}

/** A band of a cut with its three lines; metal to come off on the left of each, joint frame. */
export interface CutBand extends BandFigures {
  readonly planned: Polygons;
  readonly first: Polygons;
  readonly last: Polygons;
  /** The same of straight edges and arcs, as they are given out. */
  readonly lines: CutLines;
}

interface CutSectionOf<Band> {
  readonly id: string;
  /** Whether nothing of it is left at any depth. */
  readonly nothingLeft: boolean;
  readonly bands: readonly Band[];
}

export type CutSection = CutSectionOf<CutBand>;

/** What is said of the cut of one part: its figures, without outlines. */
export interface CutFigures {
  readonly part: Part;
  /** No line takes off more than this beyond what it must, mm. */
  readonly boundMm: number;
  /** Null without depth; the mass also without material. */
  readonly volumeMm3: number | null;
  readonly massG: number | null;
  readonly sections: readonly CutSectionOf<BandFigures>[];
  readonly walls: readonly WallBehind[];
  /** Least thickness of the part's own metal at the cut, where the fit sets a least wall. */
  readonly thin: readonly ThinPlace[];
  readonly readings: readonly ReadWall[];
  readonly unmeasured: readonly UnmeasuredCut[];
  /** Null without a cutter, or without a cut. */
  readonly cutter: CutterResult | null;
  /** Null where no straight edges were asked for, or nothing is cut. */
  readonly straight: StraightResult | null;
  readonly severed: readonly SeveredPiece[];
}

/** The cut of one part. */
export interface PartCut extends CutFigures {
  readonly sections: readonly CutSection[];
  /** The part as planned. */
  readonly after: Casting;
}
