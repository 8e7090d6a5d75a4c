import type { Vec } from '../../geometry/plane/vec.ts';
import { type Affine, keepsCircles, mapped, stretch } from '../drawing/affine.ts';
import { arcStrokes, mappedStroke, type Stroke } from './stroke.ts';

/** What one entity or element of a drawing draws: a chain of strokes, or a circle. */
export type Shape =
  | { readonly kind: 'run'; readonly strokes: readonly Stroke[]; readonly closed: boolean }
  | { readonly kind: 'circle'; readonly centre: Vec; readonly radius: number };

export const openRun = (strokes: readonly Stroke[]): Shape => ({ kind: 'run', strokes, closed: false });

export const closedRun = (strokes: readonly Stroke[]): Shape => ({ kind: 'run', strokes, closed: true });

/** A shape moved by any map of the plane; a circle that does not stay round becomes a closed run. */
export function mappedShape(map: Affine, shape: Shape): Shape {
  if (shape.kind === 'run') return { ...shape, strokes: shape.strokes.map((stroke) => mappedStroke(map, stroke)) };
  const { centre, radius } = shape;
  if (keepsCircles(map) && stretch(map) > 0) {
    return { kind: 'circle', centre: mapped(map, centre), radius: radius * stretch(map) };
  }
  return closedRun(arcStrokes(centre, radius, 0, 2 * Math.PI).map((stroke) => mappedStroke(map, stroke)));
}

/** The part of an ellipse from one angle of its own circle to another: the unit circle under `map`. */
export function ellipsePart(map: Affine, fromRad: number, sweepRad: number): Stroke[] {
  return arcStrokes({ x: 0, y: 0 }, 1, fromRad, sweepRad).map((stroke) => mappedStroke(map, stroke));
}
