import type { Vertex } from '../../geometry/plane/loop.ts';
import { distance } from '../../geometry/plane/vec.ts';
import { sameEndMm } from './tolerances.ts';

/** Drawn line (mm) from its first vertex to its last; the last vertex's bulge means nothing. */
export interface OpenLine {
  readonly vertices: readonly Vertex[];
  readonly layer: string;
  readonly place: string;
}

export const firstOf = ({ vertices }: OpenLine): Vertex => vertices[0] as Vertex;

export const lastOf = ({ vertices }: OpenLine): Vertex => vertices[vertices.length - 1] as Vertex;

/** The same line drawn from its other end. */
export function turnedRound({ vertices, ...rest }: OpenLine): OpenLine {
  const last = vertices.length - 1;
  const round = vertices.map((_, i): Vertex => {
    const { x, y } = vertices[last - i] as Vertex;
    return { x, y, bulge: 0 - (vertices[last - i - 1]?.bulge ?? 0) };
  });
  return { ...rest, vertices: round };
}

/** The way along a line's chords, mm. */
export function chordLength({ vertices }: OpenLine): number {
  let sum = 0;
  for (let i = 1; i < vertices.length; i++) sum += distance(vertices[i - 1] as Vertex, vertices[i] as Vertex);
  return sum;
}

/** Whether two chains of vertices run over each other from end to end, within `sameEndMm`. */
export function runTheSame(one: readonly Vertex[], other: readonly Vertex[]): boolean {
  if (one.length !== other.length) return false;
  return one.every((v, i) => {
    const w = other[i] as Vertex;
    const next = one[i + 1];
    if (distance(v, w) > sameEndMm) return false;
    // half the chord times the bulge is how far the arc stands out
    return next === undefined || (Math.abs(v.bulge - w.bulge) * distance(v, next)) / 2 <= sameEndMm;
  });
}
