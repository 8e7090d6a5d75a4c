import { pointOnEdge } from '../../../src/geometry/plane/edge.ts';
import { edgesOf, type Region } from '../../../src/geometry/plane/loop.ts';
import type { Rigid } from '../../../src/geometry/plane/rigid.ts';

/** The points of one closed outline, x and y by turns; the first is not repeated. */
export type Ring = Float64Array;

/** How far the chords that stand for an arc may lie inside it: the peers know straight edges only. */
export const chordMm = 1e-3;

export const ringsOf = (region: Region): readonly Ring[] =>
  region.map((loop) => {
    const points: number[] = [];
    for (const edge of edgesOf(loop)) {
      const chords =
        edge.kind === 'line' ? 1 : Math.ceil(Math.abs(edge.sweepRad) / Math.sqrt((8 * chordMm) / edge.radius));
      for (let i = 0; i < chords; i++) {
        const { x, y } = pointOnEdge(edge, i / chords);
        points.push(x, y);
      }
    }
    return Float64Array.from(points);
  });

/** Writes a ring as it stands when placed, its first point again at its end. */
export function writePlaced(ring: Ring, { cos, sin, shift }: Rigid, out: Float64Array, at: number): void {
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    out[at + i] = cos * x - sin * y + shift.x;
    out[at + i + 1] = sin * x + cos * y + shift.y;
  }
  out[at + ring.length] = out[at] as number;
  out[at + ring.length + 1] = out[at + 1] as number;
}

/** A ring as it stands when placed, its first point again at its end. */
export function placedRing(ring: Ring, placement: Rigid): Float64Array {
  const placed = new Float64Array(ring.length + 2);
  writePlaced(ring, placement, placed, 0);
  return placed;
}
