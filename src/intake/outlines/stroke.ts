import { edgeOfBulge, pointOnEdge } from '../../geometry/plane/edge.ts';
import type { Vertex } from '../../geometry/plane/loop.ts';
import { polar, type Vec } from '../../geometry/plane/vec.ts';
import { type Affine, keepsCircles, mapped, mirrors } from '../drawing/affine.ts';
import { arcsAlong, type Curve } from './arcs-along.ts';

/** A piece of drawn line: straight or an arc by its bulge (positive anticlockwise), or any smooth curve. */
export type Stroke =
  | { readonly kind: 'edge'; readonly a: Vec; readonly b: Vec; readonly bulge: number }
  | { readonly kind: 'curve'; readonly at: Curve };

export const line = (a: Vec, b: Vec): Stroke => ({ kind: 'edge', a, b, bulge: 0 });

export const curved = (at: Curve): Stroke => ({ kind: 'curve', at });

/** An arc by its centre, of at most a whole turn, in pieces of no more than half a turn each. */
export function arcStrokes(centre: Vec, radius: number, startRad: number, sweepRad: number): Stroke[] {
  const pieces = Math.abs(sweepRad) > Math.PI * (1 + 1e-12) ? 2 : 1;
  const step = sweepRad / pieces;
  const on = (i: number): Vec => polar(centre, radius, startRad + step * i);
  const bulge = Math.tan(step / 4);
  return Array.from({ length: pieces }, (_, i) => ({ kind: 'edge', a: on(i), b: on(i + 1), bulge }));
}

/** The strokes along vertices with bulges; `closed` adds the one from the last back to the first. */
export function strokesThrough(vertices: readonly Vertex[], closed: boolean): Stroke[] {
  const strokes: Stroke[] = [];
  vertices.forEach((a, i) => {
    const b = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (b !== undefined) strokes.push(...halvedBeyondHalfTurn(a, b, a.bulge));
  });
  return strokes;
}

/** Bulges over 1 hang on a short chord and magnify its rounding: such an arc is kept as its two halves. */
function halvedBeyondHalfTurn(a: Vec, b: Vec, bulge: number): Stroke[] {
  if (Math.abs(bulge) <= 1 + 1e-9) return [{ kind: 'edge', a, b, bulge }];
  const middle = pointOnEdge(edgeOfBulge(a, b, bulge), 0.5);
  const half = Math.tan(Math.atan(bulge) / 2);
  return [
    { kind: 'edge', a, b: middle, bulge: half },
    { kind: 'edge', a: middle, b, bulge: half },
  ];
}

/** A stroke moved by any map of the plane: an arc stays one where the map keeps circles round, else it is a curve. */
export function mappedStroke(map: Affine, stroke: Stroke): Stroke {
  if (stroke.kind === 'curve') return curved((t) => mapped(map, stroke.at(t)));
  const { a, b, bulge } = stroke;
  if (bulge !== 0 && !keepsCircles(map)) {
    const edge = edgeOfBulge(a, b, bulge);
    return curved((t) => mapped(map, pointOnEdge(edge, t)));
  }
  return { kind: 'edge', a: mapped(map, a), b: mapped(map, b), bulge: mirrors(map) ? 0 - bulge : bulge };
}

/** A chain of strokes as vertices, curves followed within `withinMm`; the last vertex is the chain's end. */
export function verticesAlong(strokes: readonly Stroke[], withinMm: number): Vertex[] {
  const vertices: Vertex[] = [];
  let end: Vec | null = null;
  for (const stroke of strokes) {
    if (stroke.kind === 'edge') vertices.push({ ...stroke.a, bulge: stroke.bulge });
    else vertices.push(...arcsAlong(stroke.at, withinMm).slice(0, -1));
    end = stroke.kind === 'edge' ? stroke.b : stroke.at(1);
  }
  if (end !== null) vertices.push({ ...end, bulge: 0 });
  return vertices;
}
