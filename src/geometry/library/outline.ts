import { circleLoop, type Loop } from '../plane/loop.ts';
import { type LoopFault, loopFaults } from '../plane/loop-faults.ts';
import { boxOfRegion } from '../plane/region-box.ts';
import { OutlineError, type OutlineFault } from './outline-error.ts';
import { isPoint, type Point } from './point.ts';

/**
 * A vertex of an outline, `[x, y]` in mm, or `[x, y, bulge]` where an arc starts. The bulge is the tangent of a quarter
 * of the arc's angle, positive anticlockwise, as in DXF: 1 is half a circle, 0 a straight edge. An arc flatter than a
 * bulge of 1e-9 is taken for its chord.
 */
export type Vertex = readonly [x: number, y: number, bulge?: number];

/**
 * One closed outline: its vertices in order, either way round, the last joined to the first; or a whole circle. It is
 * written as the loop of a part file in mm is.
 */
export type Outline = readonly Vertex[] | { readonly circle: Point; readonly radius: number };

/** Outlines as loops of the kernel; throws an `OutlineError` where they are no solid. */
export function soundLoops(outlines: readonly Outline[]): readonly Loop[] {
  const malformed = outlines.length === 0 ? [fault('no-outline', 0)] : outlines.flatMap(formFaults);
  if (malformed.length > 0) throw new OutlineError(malformed);
  const loops = outlines.map(loopOf);
  const faults = loops.flatMap(farFaults);
  if (faults.length === 0) faults.push(...loopFaults(loops).map(faultOf));
  if (faults.length > 0) throw new OutlineError(faults);
  return loops;
}

/** The vertices of a closed polygon, none of them beginning an arc. */
export const polygonOutline = (points: readonly { readonly x: number; readonly y: number }[]): readonly Point[] =>
  points.map(({ x, y }) => [x, y]);

/** A bulge below this leaves its arc on its chord, and its centre too far off to calculate with. */
const straightBulge = 1e-9;

/** Farther than any casting reaches, and as far as the polygon engine is used. */
export const farthestMm = 1e5;

const isCircle = (outline: Outline): outline is Exclude<Outline, readonly Vertex[]> => !Array.isArray(outline);

function loopOf(outline: Outline): Loop {
  if (isCircle(outline)) return circleLoop({ x: outline.circle[0], y: outline.circle[1] }, outline.radius);
  const vertices = outline.map(([x, y, bulge = 0]) => ({ x, y, bulge: Math.abs(bulge) < straightBulge ? 0 : bulge }));
  return { kind: 'path', vertices };
}

const fault = (kind: OutlineFault['kind'], outline: number, vertex: number | null = null): OutlineFault => ({
  kind,
  outline,
  otherOutline: outline,
  vertex,
  at: null,
});

/** What is written otherwise than outlines are. */
function formFaults(outline: Outline, index: number): OutlineFault[] {
  if (isCircle(outline)) {
    const { circle, radius } = (outline ?? {}) as Partial<typeof outline>;
    const isWritten = isPoint(circle) && Number.isFinite(radius) && Number(radius) > 0;
    return isWritten ? [] : [fault('malformed', index)];
  }
  if (outline.length === 0) return [fault('too-few-vertices', index)];
  return outline.flatMap((vertex, i) => (isVertex(vertex) ? [] : [fault('malformed', index, i)]));
}

const isVertex = (vertex: unknown): vertex is Vertex =>
  Array.isArray(vertex) && (vertex.length === 2 || vertex.length === 3) && vertex.every(Number.isFinite);

function farFaults(loop: Loop, index: number): OutlineFault[] {
  const { minX, minY, maxX, maxY } = boxOfRegion([loop]);
  return Math.max(-minX, -minY, maxX, maxY) <= farthestMm ? [] : [fault('too-far', index)];
}

const faultOf = ({ kind, loop, otherLoop, vertex, at }: LoopFault): OutlineFault => ({
  kind,
  outline: loop,
  otherOutline: otherLoop,
  vertex,
  at: [at.x, at.y],
});
