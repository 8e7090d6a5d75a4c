import type { Edge } from '../../geometry/plane/edge.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import type { Region } from '../../geometry/plane/loop.ts';
import { add, scale, type Vec } from '../../geometry/plane/vec.ts';
import type { Role } from './styles.ts';

/** A closed region, its lines and arcs exact, solid by even-odd nesting. */
export interface OutlineMark {
  readonly kind: 'outline';
  readonly loops: Region;
}

/** Edges that follow one another, not closed. */
export interface RunMark {
  readonly kind: 'run';
  readonly edges: readonly Edge[];
}

export interface PolylineMark {
  readonly kind: 'polyline';
  readonly points: readonly Vec[];
}

/** Parallel lines clipped to a region; `pitchMm` from line to line on the sheet. */
export interface HatchMark {
  readonly kind: 'hatch';
  readonly loops: Region;
  readonly angleRad: number;
  readonly pitchMm: number;
}

export interface ArrowMark {
  readonly kind: 'arrow';
  readonly from: Vec;
  readonly to: Vec;
  readonly heads: 'to' | 'both';
}

/** One line of text; `at` on its base line, `sizeMm` the font size on the sheet. */
export interface TextMark {
  readonly kind: 'text';
  readonly at: Vec;
  readonly text: string;
  readonly sizeMm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold: boolean;
}

export type Mark = OutlineMark | RunMark | PolylineMark | HatchMark | ArrowMark | TextMark;

/** Marks that mean the same thing; later layers lie on top of earlier ones. */
export interface Layer {
  readonly role: Role;
  readonly marks: readonly Mark[];
}

/**
 * One view in its own frame, mm, y up. A point p of it lies at `at + scale·p` on the sheet; text sizes, line widths
 * and the pitch of hatching are the sheet's own.
 */
export interface View {
  readonly id: string;
  readonly at: Vec;
  readonly scale: number;
  /** What the view takes up, labels included, in its own frame. */
  readonly frame: Box;
  /** Marks of clipped roles show only inside this circle of the view's own frame. */
  readonly clip: { readonly centre: Vec; readonly radiusMm: number } | null;
  readonly layers: readonly Layer[];
}

/** A drawing sheet, mm from its lower left corner, y up; every medium paints the same one. */
export interface Scene {
  readonly title: string;
  readonly description: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Width of a wide line. */
  readonly penMm: number;
  readonly views: readonly View[];
}

export const onSheet = (view: Pick<View, 'at' | 'scale'>, p: Vec): Vec => add(view.at, scale(p, view.scale));
