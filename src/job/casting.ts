import type { Region } from '../geometry/plane/loop.ts';
import type { Vec } from '../geometry/plane/vec.ts';

/** A range of depth in mm from the part's own mating face into the part; negative stands proud of the face. */
export interface DepthRange {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The outlines of a part over one range of depth; `depth` null reaches through every depth. */
export interface Section {
  readonly id: string;
  readonly depth: DepthRange | null;
  readonly mayCut: boolean;
  readonly loops: Region;
  readonly traceErrorMm: number;
  readonly depthErrorMm: number;
  /** How the outline was got, as the tracer wrote it; null when not stated. */
  readonly gotBy: string | null;
  /** False when the trace error is only assumed, which the report must say aloud. */
  readonly traceErrorStated: boolean;
  readonly note: string | null;
  /** The depth of the whole section where this is a layer that a cut leaves of it: only its ends are mating faces. */
  readonly whole?: DepthRange;
}

export type HoleKind = 'dowel' | 'bolt' | 'tapped' | 'stud' | 'bore' | 'planned';

export interface Hole {
  readonly id: string;
  readonly kind: HoleKind;
  readonly at: Vec;
  readonly diameterMm: number | null;
  /** How far a dowel stands proud of its own face; 0 for a hole. */
  readonly proudMm: number;
  /** False when nobody said how far, so that it may be a dowel or its hole. */
  readonly proudStated: boolean;
  /** Thread designation as written, e.g. `M12x1.75`; null when not threaded or not stated. */
  readonly thread: string | null;
  /** Null where its file does not say: then through every depth. */
  readonly depth: DepthRange | null;
  readonly keepWallMm: number | null;
  /** Whether a cut may break into it. */
  readonly mayBreak: boolean;
}

export interface Hollow {
  readonly id: string;
  readonly depth: DepthRange | null;
  readonly loops: Region;
  readonly keepWallMm: number | null;
  readonly traceErrorMm: number;
}

export interface DoNotCut {
  readonly id: string;
  readonly depth: DepthRange | null;
  readonly loops: Region;
}

export interface WallReading {
  readonly at: Vec;
  readonly depthMm: number;
  readonly wallMm: number;
  readonly errorMm: number;
}

export interface Material {
  readonly name: string;
  readonly densityGPerCm3: number;
}

/**
 * A part as read for its role in a job: millimetres, seen as in the joint frame (mirrored where `viewedFrom`
 * asks for it), still at the origin and tilt of its own drawing.
 */
export interface Casting {
  readonly file: string;
  readonly name: string;
  readonly viewedFrom: 'face' | 'back';
  readonly mirrored: boolean;
  readonly units: 'mm' | 'in';
  readonly material: Material | null;
  readonly castingNumber: string | null;
  readonly sections: readonly Section[];
  readonly holes: readonly Hole[];
  readonly hollows: readonly Hollow[];
  readonly doNotCut: readonly DoNotCut[];
  readonly wallReadings: readonly WallReading[];
  /** Where the tracing is complete; null: taken as complete everywhere. */
  readonly traced: { readonly depth: DepthRange | null; readonly loops: Region } | null;
}
