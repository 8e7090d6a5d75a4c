import { distance, type Vec } from '../plane/vec.ts';
import type { Polygon } from '../polygons/polygons.ts';

/** What an outline does within this, mm, is its roughness: it is traced no better, and a grinder breaks such an edge. */
export const roughMm = 0.5;

/** How far along a closed outline each of its vertices lies, mm, and how long it is, its roughness left out. */
export interface Along {
  readonly atMm: Float64Array;
  readonly lengthMm: number;
}

/**
 * Measures along the chords of a closed outline that keeps within `roughMm` of them and nowhere runs back along them by
 * more; what lies between their ends counts where it stands square to them (Ramer 1972, Douglas and Peucker 1973). A
 * spike lower than that is no way round, and noise makes no way longer; a tongue that is longer stays what it is.
 */
export function alongOutline(polygon: Polygon): Along {
  const count = polygon.length;
  const atMm = new Float64Array(count);
  const at = (i: number): Vec => polygon[i === count ? 0 : i] as Vec;
  const spans: [number, number][] = [[0, count]];
  let goneMm = 0;
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const split = splitOf(at, from, to, from === 0 && to === count ? 0 : roughMm);
    if (split !== null) {
      spans.push([split, to], [from, split]);
      continue;
    }
    const chordMm = distance(at(from), at(to));
    for (let i = from; i < to; i++)
      atMm[i] = goneMm + Math.max(0, Math.min(chordMm, alongChord(at(from), at(to), at(i))));
    goneMm += chordMm;
  }
  return { atMm, lengthMm: goneMm };
}

/** The vertex where a stretch of outline leaves its chord farthest, or turns to run back along it; null where neither. */
function splitOf(at: (i: number) => Vec, from: number, to: number, withinMm: number): number | null {
  const [a, b] = [at(from), at(to)];
  const chordMm = distance(a, b);
  let [farMm, far, backMm, back] = [withinMm, -1, roughMm, -1];
  let [reachedMm, reached] = [0, from];
  for (let i = from + 1; i < to; i++) {
    const p = at(i);
    const alongMm = alongChord(a, b, p);
    const t = chordMm === 0 ? 0 : Math.max(0, Math.min(1, alongMm / chordMm));
    const offMm = Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
    if (offMm > farMm) [farMm, far] = [offMm, i];
    if (alongMm > reachedMm) [reachedMm, reached] = [alongMm, i];
    else if (reached > from && reachedMm - alongMm > backMm) [backMm, back] = [reachedMm - alongMm, reached];
  }
  if (far >= 0) return far;
  return back >= 0 ? back : null;
}

/** How far along the chord from `a` to `b` the point beside it lies, mm. */
function alongChord(a: Vec, b: Vec, p: Vec): number {
  const chordMm = distance(a, b);
  return chordMm === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / chordMm;
}
