import type { Vec } from '../geometry/plane/vec.ts';
import type { HoleKind } from '../job/casting.ts';

/** A circle that is to be a hole: the smallest one round the point `at`. */
export interface AskedHole {
  readonly id: string;
  readonly kind: HoleKind;
  readonly at: Vec;
}

/** What the builder says beside the file; lengths in the part's units, null or empty where nothing is said. */
export interface ImportOptions {
  readonly name: string;
  readonly viewedFrom: 'face' | 'back';
  readonly units: string | null;
  readonly dpi: number | null;
  readonly layers: readonly string[];
  readonly section: string | null;
  readonly holeLayers: readonly { readonly layer: string; readonly kind: HoleKind }[];
  readonly holes: readonly AskedHole[];
  readonly depth: readonly [from: number, to: number] | null;
  readonly join: number | null;
  readonly traceError: number | null;
  readonly gotBy: string | null;
  readonly mayCut: readonly string[];
  /** Null leaves what the file does not call a hole as it is drawn; else holes are told by size and place about this axis. */
  readonly proposeHoles: { readonly axis: Vec } | null;
}

/** What is meant where the builder says nothing beside the file. */
export const nothingSaid: Omit<ImportOptions, 'name' | 'viewedFrom'> = {
  units: null,
  dpi: null,
  layers: [],
  section: null,
  holeLayers: [],
  holes: [],
  depth: null,
  join: null,
  traceError: null,
  gotBy: null,
  mayCut: [],
  proposeHoles: null,
};
