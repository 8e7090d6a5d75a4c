import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { add, distance, dot, leftOf, scale, sub, type Vec } from '../geometry/plane/vec.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import type { Polygon } from '../geometry/polygons/polygons.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { cornersAlong, type MeasuredRun, measured, pointAlong } from './marking-out-along.ts';
import type { BenchBand, BenchPlace } from './marking-out-bench.ts';
import type { Run } from './marking-out-edges.ts';
import { throughTo } from './marking-out-take-off.ts';

/**
 * The side of a casting unrolled where metal comes off: lengths along the present outline in mm, from where the planned
 * cut begins, to the right as one stands before the side with the mating face up.
 */
export interface SideStrip {
  readonly band: BenchBand;
  readonly fromMm: number;
  readonly toMm: number;
  /** Where the planned cut ends; it begins at 0. */
  readonly cutMm: number;
  /** Where the first and the last line begin and end on the side. */
  readonly firstEnds: readonly number[];
  readonly lastEnds: readonly number[];
  /** Where the side turns a corner. */
  readonly corners: readonly number[];
  readonly stations: readonly Station[];
  /** Places of the marking-out table that lie on the side. */
  readonly places: readonly { readonly place: BenchPlace; readonly alongMm: number }[];
}

/** What comes off square to the side at a place, to each line, mm. */
export interface Station {
  readonly alongMm: number;
  readonly firstMm: number;
  readonly plannedMm: number;
  readonly lastMm: number;
  /** Whether the planned cut comes out on another side. */
  readonly through: boolean;
}

/** The paper runs on past the cut by this, mm, or past the last line by half of it. */
const pastMm = 16;
/** Paper is folded at corners sharper than this; a rough casting has many that are not. */
const foldRad = (2 * Math.PI) / 9;
/** From figure to figure, mm. */
const stepMm = 10;
/** Shorter stretches of the side are no place for paper, mm. */
const leastMm = 1;
/** A place this near to the side lies on it, mm. */
const onSideMm = 0.02;

/** A strip for each stretch of the present outside that a band takes off. */
export function sideStrips(band: BenchBand): SideStrip[] {
  const outlines = polygonise(band.section.loops, toleranceMm, 'outside');
  return band.edges.outsides
    .filter(({ closed }) => !closed)
    .map(measured)
    .filter(({ lengthMm }) => lengthMm >= leastMm)
    .flatMap((outside) => {
      const side = sideOf(outlines, outside);
      return side === null ? [] : [stripOf(band, side, outside.lengthMm)];
    });
}

/** The whole outline that a stretch lies on, closed, begun where the stretch begins. */
function sideOf(outlines: readonly Polygon[], { points }: MeasuredRun): MeasuredRun | null {
  const start = points[0] as Vec;
  const nearest = outlines
    .map((outline) => ({ outline, foot: footOn(measuredRound(outline), start) }))
    .toSorted((a, b) => a.foot.offMm - b.foot.offMm)[0];
  if (nearest === undefined) return null;
  const { outline, foot } = nearest;
  const round = [...outline.slice(foot.edge + 1), ...outline.slice(0, foot.edge + 1)];
  return measured({ points: [start, ...round, start], closed: true });
}

const measuredRound = (outline: Polygon): MeasuredRun =>
  measured({ points: [...outline, outline[0] as Vec], closed: true });

interface Foot {
  readonly edge: number;
  readonly alongMm: number;
  readonly offMm: number;
}

/** The place of a line that is nearest to a point. */
function footOn({ points, reach }: MeasuredRun, p: Vec): Foot {
  let best: Foot = { edge: 0, alongMm: 0, offMm: Number.POSITIVE_INFINITY };
  points.slice(1).forEach((b, edge) => {
    const a = points[edge] as Vec;
    const way = sub(b, a);
    const square = dot(way, way);
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, a), way) / square));
    const offMm = distance(p, add(a, scale(way, t)));
    if (offMm < best.offMm) best = { edge, alongMm: (reach[edge] as number) + t * Math.sqrt(square), offMm };
  });
  return best;
}

function stripOf(band: BenchBand, side: MeasuredRun, cutMm: number): SideStrip {
  const spare = Math.max(0, side.lengthMm - cutMm) / 2;
  // lengths round the outline, those behind the start as negative
  const onStrip = (alongMm: number): number => (alongMm > cutMm + spare ? alongMm - side.lengthMm : alongMm);
  const alongOf = (p: Vec): { alongMm: number; offMm: number } => {
    const { alongMm, offMm } = footOn(side, p);
    return { alongMm: onStrip(alongMm), offMm };
  };
  const endsOf = (runs: readonly Run[]): number[] =>
    runs
      .flatMap(({ points }) => [points[0] as Vec, points.at(-1) as Vec])
      .map(alongOf)
      .filter(({ alongMm, offMm }) => offMm < onSideMm && alongMm > -2 * pastMm && alongMm < cutMm + 2 * pastMm)
      .map(({ alongMm }) => alongMm);
  const lastEnds = endsOf(band.lastEdges.outsides);
  const fromMm = Math.max(-spare, Math.min(-pastMm, ...lastEnds.map((mm) => mm - pastMm / 2)));
  const toMm = Math.min(cutMm + spare, Math.max(cutMm + pastMm, ...lastEnds.map((mm) => mm + pastMm / 2)));
  const corners = cornersAlong(side, foldRad).map(onStrip);
  return {
    band,
    fromMm,
    toMm,
    cutMm,
    firstEnds: endsOf(band.firstEdges.outsides),
    lastEnds,
    corners: corners.filter((mm) => mm > fromMm && mm < toMm).sort((a, b) => a - b),
    stations: stationsAlong(cutMm, corners).map((alongMm) => stationAt(band, side, alongMm)),
    places: band.places
      .map((place) => ({ place, ...alongOf(place.at) }))
      .filter(({ alongMm, offMm }) => offMm < onSideMm && alongMm > fromMm && alongMm < toMm),
  };
}

/** Places for figures between corners, as even as can be: one in the middle of every 10 mm or so. */
function stationsAlong(cutMm: number, corners: readonly number[]): number[] {
  const stops = [0, ...corners.filter((mm) => mm > 0 && mm < cutMm).sort((a, b) => a - b), cutMm];
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] as number;
    const count = Math.max(1, Math.round((to - from) / stepMm));
    return Array.from({ length: count }, (_, k) => from + ((k + 0.5) * (to - from)) / count);
  });
}

const chordMm = 0.05;

function stationAt({ trees, present }: BenchBand, side: MeasuredRun, alongMm: number): Station {
  const at = pointAlong(side, alongMm);
  const inward = leftOf(pointAlong(side, alongMm - chordMm), pointAlong(side, alongMm + chordMm));
  const plannedMm = throughTo(trees.planned, at, inward, 0);
  return {
    alongMm,
    firstMm: Math.min(plannedMm, throughTo(trees.first, at, inward, 0)),
    plannedMm,
    lastMm: Math.max(plannedMm, throughTo(trees.last, at, inward, plannedMm)),
    through: nearestOnOutline(present, add(at, scale(inward, plannedMm))).distanceMm < onSideMm,
  };
}
