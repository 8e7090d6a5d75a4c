import { add, cross, dot, lerp, scale, sub, type Vec, vec } from '../plane/vec.ts';
import type { Polygon } from '../polygons/polygons.ts';
import { forBlocksWithin, type PointBlocks } from './point-blocks.ts';
import type { CutRun } from './straight-run.ts';
import { chordMm, endMm, hairMm } from './tolerances.ts';

/** A straight line laid on the cut's edge from the metal's side; metal is on its left. Lengths along it from `at`, mm. */
export interface LaidLine {
  readonly at: Vec;
  readonly along: Vec;
  /** Which point of the edge it lies on. */
  readonly touch: number;
  /** How far it goes either way before it meets an outline; null where it meets none. */
  readonly back: Meeting;
  readonly ahead: Meeting;
}

/** The outline that a run is part of, and all others that lines must not cross. */
export interface Outlines {
  readonly own: PointBlocks;
  readonly others: readonly PointBlocks[];
}

/** Where a line meets an outline: which edge of the run's ring, or −1 for another outline. */
export interface Meeting {
  readonly alongMm: number;
  readonly edge: number;
}

/** Directions are taken between so many points of the edge. */
const mostPoints = 48;

/** Lines that also turn about the ends of the edge by so much, degrees. */
const endTurnsDeg = [0.5, 1, 2, 4, 8, 16, 32] as const;

/**
 * Straight lines that touch a cut's edge and leave all of it on the side that goes, as far as they run through metal: one
 * for every direction between two points of the edge, and some turned about its ends.
 */
export function laidLines(run: CutRun, outlines: Outlines): LaidLine[] {
  const points = markedPoints(run);
  const lines = points.flatMap((i, n) => points.slice(n + 1).map((j) => laidBetween(run, i, j)));
  const edge = run.ring.slice(0, run.end + 1);
  const [first, last] = [points.slice(0, 2), points.slice(-2)];
  const turned = endTurnsDeg.flatMap((deg) => [
    laidAlong(run, turnedBy(direction(edge, first), -deg), 0, run.end),
    laidAlong(run, turnedBy(direction(edge, last), deg), 0, run.end),
  ]);
  return [...new Map([...lines, ...turned].map((line) => [nearness(line), line])).values()]
    .flatMap((line) => metBy(line, run, outlines) ?? [])
    .sort((a, b) => a.touch - b.touch || cross(b.along, a.along));
}

/** Lines alike to a third of a degree that touch at the same place to a millimetre are one. */
const nearness = ({ at, along }: BareLine): string =>
  [(Math.atan2(along.y, along.x) * 540) / Math.PI, at.x, at.y].map(Math.round).join();

type BareLine = Pick<LaidLine, 'at' | 'along' | 'touch'>;

const laidBetween = ({ ring, ...run }: CutRun, i: number, j: number): BareLine =>
  laidAlong({ ring, ...run }, direction(ring, [i, j]), i, j);

function laidAlong({ ring }: CutRun, along: Vec, from: number, to: number): BareLine {
  const outward = vec(-along.y, along.x);
  let [touch, mostMm] = [from, Number.NEGATIVE_INFINITY];
  for (let k = from; k <= Math.min(to, ring.length); k++) {
    const mm = dot(ring[k % ring.length] as Vec, outward);
    if (mm > mostMm) [touch, mostMm] = [k, mm];
  }
  return { at: add(ring[touch % ring.length] as Vec, scale(outward, hairMm)), along, touch };
}

function direction(points: readonly Vec[], [i = 0, j = 0]: readonly number[]): Vec {
  const way = sub(points[j % points.length] as Vec, points[i] as Vec);
  return scale(way, 1 / Math.hypot(way.x, way.y));
}

function turnedBy({ x, y }: Vec, deg: number): Vec {
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return vec(cos * x - sin * y, sin * x + cos * y);
}

/** A line with what it meets, and where; null where it meets nothing, which no line on an outline does. */
function metBy(line: BareLine, { ring, start, end }: CutRun, { own, others }: Outlines): LaidLine | null {
  // one laid on an end of the edge meets the outline there
  const hereMm = line.touch === 0 ? endMm : line.touch === end ? -endMm : 0;
  const across = vec(-line.along.y, line.along.x);
  let back: Meeting = { alongMm: Number.NEGATIVE_INFINITY, edge: -1 };
  let ahead: Meeting = { alongMm: Number.POSITIVE_INFINITY, edge: -1 };
  for (const outline of [own, ...others]) {
    forBlocksWithin(outline, line.at, across, onLine, (first, past) => {
      for (let i = first; i < past && i + 1 < outline.xs.length; i++) {
        const alongMm = meeting(line, outline, i);
        if (alongMm === null) continue;
        const edge = outline === own ? (i - start + ring.length) % ring.length : -1;
        if (alongMm <= hereMm && alongMm > back.alongMm) back = { alongMm, edge };
        if (alongMm > hereMm && alongMm < ahead.alongMm) ahead = { alongMm, edge };
      }
    });
  }
  return Number.isFinite(back.alongMm) && Number.isFinite(ahead.alongMm) ? { ...line, back, ahead } : null;
}

const onLine = (): [number, number] => [0, 0];

function meeting({ at, along }: BareLine, { xs, ys }: PointBlocks, i: number): number | null {
  const [ax, ay] = [xs[i] as number, ys[i] as number];
  const [bx, by] = [xs[i + 1] as number, ys[i + 1] as number];
  const sideA = along.x * (ay - at.y) - along.y * (ax - at.x);
  const sideB = along.x * (by - at.y) - along.y * (bx - at.x);
  if (sideA > 0 === sideB > 0) return null;
  return dot(along, sub(lerp(vec(ax, ay), vec(bx, by), sideA / (sideA - sideB)), at));
}
/** Points of the edge that tell its shape, both ends among them. */
function markedPoints({ ring, end }: CutRun): number[] {
  for (let withinMm = chordMm; ; withinMm *= 2) {
    const points = [0, ...marksBetween(ring, 0, end, withinMm), end];
    if (points.length <= mostPoints) return points;
  }
}

/** Douglas and Peucker's points between two of an edge, from which chords keep within a distance. */
function marksBetween(ring: Polygon, i: number, j: number, withinMm: number): number[] {
  const [a, b] = [ring[i] as Vec, ring[j % ring.length] as Vec];
  const way = sub(b, a);
  const lengthMm = Math.hypot(way.x, way.y);
  let [far, farMm] = [-1, withinMm];
  for (let k = i + 1; k < j; k++) {
    const from = sub(ring[k] as Vec, a);
    const mm = lengthMm === 0 ? Math.hypot(from.x, from.y) : Math.abs(cross(way, from)) / lengthMm;
    if (mm > farMm) [far, farMm] = [k, mm];
  }
  return far < 0 ? [] : [...marksBetween(ring, i, far, withinMm), far, ...marksBetween(ring, far, j, withinMm)];
}
