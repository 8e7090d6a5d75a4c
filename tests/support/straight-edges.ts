import { expect } from 'vitest';
import type { BandAnswer } from '../../src/answers/grind-answer.ts';
import { nearestOnOutline } from '../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import type { Region } from '../../src/geometry/plane/loop.ts';
import { angleOf, cross, distance, dot, lerp, sub, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { polygonise } from '../../src/geometry/polygons/polygonise.ts';
import type { Cutter } from '../../src/job/job.ts';
import { loopOf } from '../../src/job/lengths.ts';

export const flatCutter = (radiusMm: number): Cutter => ({
  radiusMm,
  nose: 'flat',
  handErrorMm: 0.5,
  runOut: 'cut-past',
  stepoverMm: null,
});

/** Arcs are looked at by their tangents, within this, mm. */
const arcsToldMm = 1e-4;

/** Edges of the cut that lie within the metal as it was, specks at their ends left out. */
export function edgesWithin(files: BandAnswer['loops'], outline: Region): Vec[][] {
  const tree = buildOutlineTree(outline);
  const cut = files.map((file) => loopOf(file, 1));
  return polygonise(cut, arcsToldMm, 'outside').flatMap((points) => {
    const next = (i: number): Vec => points[(i + 1) % points.length] as Vec;
    const isCut = points.map((a, i) =>
      [0.25, 0.5, 0.75].some((t) => nearestOnOutline(tree, lerp(a, next(i), t)).distanceMm > 2.5e-3),
    );
    return isCut.flatMap((cut, start) => {
      if (!cut || isCut.at(start - 1)) return [];
      const edge = [points[start] as Vec];
      for (let i = start; isCut[i % points.length] && edge.length <= points.length; i++)
        edge.push(next(i % points.length));
      return lengthOf(edge) < 0.06 ? [] : [edge];
    });
  });
}

const lengthOf = (points: readonly Vec[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + distance(points[i] as Vec, p), 0);

/** Longer than those of an arc of 17 mm. */
const flatFromMm = 0.3;

/** How many flats an edge has, run with the cut on its left: none too short but its first and last, no arc too tight. */
export function expectStraight(edge: readonly Vec[], radiusMm: number, where = ''): number {
  const pieces = edge.slice(1).map((b, i) => ({ mm: distance(edge[i] as Vec, b), way: sub(b, edge[i] as Vec) }));
  const flats = pieces.flatMap(({ mm }, i) => (mm > flatFromMm ? [i] : []));
  for (const i of flats.slice(1, -1)) expect(pieces[i]?.mm, where).toBeGreaterThan(10 - 0.02);
  flats.slice(1).forEach((to, n) => {
    const from = flats[n] as number;
    const between = pieces.slice(from + 1, to);
    const mm = between.reduce((sum, piece) => sum + piece.mm, 0);
    let turnRad = 0;
    for (let i = from; i < to; i++) turnRad += turnOf(pieces[i]?.way as Vec, pieces[i + 1]?.way as Vec);
    // internal corners of the metal turn left along the cut
    if (turnRad > 0.01) expect(mm / turnRad, where).toBeGreaterThan(radiusMm * 0.97 - 0.01 - radiusSlackMm(turnRad));
  });
  return flats.length;
}

/**
 * Lines are given out within 3e-4 mm of what was made straight, and an arc that turns but little bows by little more: its
 * radius is the less sure the less it turns.
 */
const radiusSlackMm = (turnRad: number): number => 3e-4 / (1 - Math.cos(Math.min(turnRad, Math.PI) / 2));

const turnOf = (a: Vec, b: Vec): number => angleOf(vec(dot(a, b), cross(a, b)));
