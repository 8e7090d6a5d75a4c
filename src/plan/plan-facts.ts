import type { BandAnswer, GrindAnswer } from '../answers/grind-answer.ts';
import { type Vec, vec } from '../geometry/plane/vec.ts';
import { pieces } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { areaMm2, type Polygons, signedAreaMm2 } from '../geometry/polygons/polygons.ts';
import { regionAreaMm2 } from '../geometry/polygons/region-measures.ts';
import { loopOf } from '../job/lengths.ts';

/** One piece of metal to come off, by its area and its centre of area in the joint frame, mm. */
export interface Piece {
  readonly areaMm2: number;
  readonly at: readonly [number, number];
}

/** What a builder looks for on the casting, band by band, beyond the plan's own figures. */
export interface BandFacts {
  /** The separate pieces of the planned cut, the largest first. */
  readonly pieces: readonly Piece[];
  readonly firstAreaMm2: number;
  readonly lastAreaMm2: number;
}

/** The facts of every band of one part's cut, in the order of its sections and bands. */
export type CutFacts = readonly (readonly BandFacts[])[];

/** The facts of each part that is cut: the one the plan is for, then, where both are, the moving one. */
export type PlanFacts = readonly CutFacts[];

export const planFacts = (answer: GrindAnswer): PlanFacts =>
  [answer, ...(answer.movingCut === null ? [] : [answer.movingCut])].map(({ sections }) =>
    sections.map(({ bands }) => bands.map(factsOf)),
  );

/** The loops of a plan are polygons already; this only bounds an arc, were there one. */
const chordMm = 1e-3;

function factsOf({ loops, firstLoops, lastLoops }: BandAnswer): BandFacts {
  const regionOf = (files: BandAnswer['loops']) => files.map((file) => loopOf(file, 1));
  return {
    pieces: pieces(polygonise(regionOf(loops), chordMm, 'outside'))
      .map((piece) => ({ areaMm2: areaMm2(piece), at: centreOf(piece) }))
      .sort((a, b) => b.areaMm2 - a.areaMm2),
    firstAreaMm2: regionAreaMm2(regionOf(firstLoops)),
    lastAreaMm2: regionAreaMm2(regionOf(lastLoops)),
  };
}

/** The centre of area: triangles fanned about the first point of each polygon, weighed by their signed areas. */
function centreOf(piece: Polygons): readonly [number, number] {
  const origin = piece[0]?.[0] ?? vec(0, 0);
  let [x, y, area] = [0, 0, 0];
  for (const polygon of piece) {
    polygon.forEach((a, i) => {
      const b = polygon[(i + 1) % polygon.length] as Vec;
      const triangle = signedAreaMm2([origin, a, b]);
      x += (triangle * (a.x + b.x - 2 * origin.x)) / 3;
      y += (triangle * (a.y + b.y - 2 * origin.y)) / 3;
      area += triangle;
    });
  }
  return area === 0 ? [origin.x, origin.y] : [origin.x + x / area, origin.y + y / area];
}
