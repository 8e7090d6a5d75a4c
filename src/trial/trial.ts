import type { Vec } from '../geometry/plane/vec.ts';
import type { Position } from '../job/path.ts';

/** What has come off the part that is cut when it is offered up. */
export type CutSoFar =
  | { readonly kind: 'none' | 'first' | 'planned' }
  | { readonly kind: 'measured'; readonly places: readonly { readonly place: number; readonly takeOffMm: number }[] };

/** A place on the fixed part, and where the moving part stood when it was looked at; joint frame, mm. */
interface ReadPlace {
  readonly id: string;
  readonly section: string;
  readonly at: Vec;
  readonly depthMm: number;
  readonly position: Position;
  /** ± limit, mm. */
  readonly errorMm: number;
}

/** Modelling clay pressed between the castings: from the place to the nearest metal of the moving part. */
export interface ClayReading extends ReadPlace {
  readonly kind: 'clay';
  readonly thicknessMm: number;
}

/** A witness mark, or a place looked at that has none. */
export interface MarkReading extends ReadPlace {
  readonly kind: 'mark';
  readonly touched: boolean;
}

export type TrialReading = ClayReading | MarkReading;

/** Where the moving part would go no farther, or that it went all the way. */
export type Stopped =
  | { readonly kind: 'home' }
  | {
      readonly kind: 'at';
      readonly position: Position;
      /** ± limit: rad where it stopped on a turn, mm on a slide. */
      readonly error: number;
      /** Counts from 1; on what leg that is, and how far along. */
      readonly leg: number;
      readonly at: number;
      /** How the error is meant. */
      readonly per: 'turn' | 'slide';
    };

/** One trial fit. */
export interface Go {
  readonly go: number;
  readonly cut: CutSoFar;
  /** Null where nobody wrote it down. */
  readonly stopped: Stopped | null;
  readonly readings: readonly TrialReading[];
  /** Feeler gauge between the mating faces at home: tells of tilt, and never of shift or turn. */
  readonly faces: readonly { readonly at: Vec; readonly gapMm: number }[];
}

/** The trial fits of a job, in order. */
export interface Trial {
  readonly file: string;
  readonly goes: readonly Go[];
}
