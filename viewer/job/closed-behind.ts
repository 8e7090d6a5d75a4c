import { apart, arcOf, type Points, vertexAt, type XY, xyOf } from './arc.ts';
import type { PointList } from './point-edits.ts';

/** One edge carried sideways: a line with its direction, or a circle run one way. */
interface OffsetEdge {
  readonly start: XY;
  readonly end: XY;
  readonly along: XY;
  readonly arc: { readonly centre: XY; readonly radius: number; readonly sweepRad: number } | null;
}

/** A corner that reaches further than so many times the distance is cut off. */
const sharpest = 3;

/**
 * The outline of metal that goes on for `behind` on one side of a run, all along it: the run, and back along its parallel,
 * lines met in their corners, arcs about their own centres. Null where an edge is too short or an arc too tight for that.
 */
export function closedBehind(run: PointList, metal: 'left' | 'right', behind: number): Points | null {
  const carried = carriedEdges(run, metal === 'left' ? behind : -behind);
  if (carried === null || carried.length === 0 || !(behind > 0)) return null;
  const back = carried.map((edge, i) => ({
    edge,
    from:
      i === 0
        ? [edge.start]
        : meeting(carried[i - 1] as OffsetEdge, edge, xyOf(run[i] as XY & [number, number]), behind),
  }));
  const chain: { at: XY; bulge: number }[] = [];
  for (const [i, { edge, from }] of back.entries()) {
    const start = from.at(-1) as XY;
    const end = back[i + 1]?.from[0] ?? edge.end;
    const bulge = bulgeOf(edge, start, end);
    if (bulge === null) return null;
    for (const corner of from.slice(0, -1)) chain.push({ at: corner, bulge: 0 });
    chain.push({ at: start, bulge });
  }
  const last = (carried.at(-1) as OffsetEdge).end;
  const home = [...chain, { at: last, bulge: 0 }].reverse();
  return [
    ...run.map((v, i) => vertexAt(xyOf(v), i === run.length - 1 ? 0 : (v[2] ?? 0))),
    ...home.map(({ at }, i) => vertexAt(at, -(home[i + 1]?.bulge ?? 0))),
  ];
}

function carriedEdges(run: PointList, left: number): OffsetEdge[] | null {
  const edges: OffsetEdge[] = [];
  for (let i = 0; i + 1 < run.length; i++) {
    const [a, b, bulge] = [xyOf(run[i] as [number, number]), xyOf(run[i + 1] as [number, number]), run[i]?.[2] ?? 0];
    const edge = bulge === 0 ? carriedLine(a, b, left) : carriedArc(a, b, bulge, left);
    if (edge === null) return null;
    edges.push(edge);
  }
  return edges;
}

function carriedLine(a: XY, b: XY, left: number): OffsetEdge | null {
  const long = apart(a, b);
  if (long === 0) return null;
  const along: XY = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  const shift = ([x, y]: XY): XY => [x - along[1] * left, y + along[0] * left];
  return { start: shift(a), end: shift(b), along, arc: null };
}

function carriedArc(a: XY, b: XY, bulge: number, left: number): OffsetEdge | null {
  const { centre, radius: was, sweepRad } = arcOf(a, b, bulge);
  // left of an anticlockwise arc is toward its centre
  const radius = was - Math.sign(bulge) * left;
  if (radius <= 0) return null;
  const out = ([x, y]: XY): XY => [
    centre[0] + ((x - centre[0]) * radius) / was,
    centre[1] + ((y - centre[1]) * radius) / was,
  ];
  return { start: out(a), end: out(b), along: [0, 0], arc: { centre, radius, sweepRad } };
}

/** Where one carried edge goes over into the next: one point, or two with a straight between them. */
function meeting(before: OffsetEdge, after: OffsetEdge, corner: XY, behind: number): XY[] {
  if (apart(before.end, after.start) <= 1e-9 * behind) return [before.end];
  const middle: XY = [(before.end[0] + after.start[0]) / 2, (before.end[1] + after.start[1]) / 2];
  const nearest = meetings(before, after).sort((p, q) => apart(p, middle) - apart(q, middle))[0];
  return nearest !== undefined && apart(nearest, corner) <= sharpest * behind ? [nearest] : [before.end, after.start];
}

function meetings(one: OffsetEdge, other: OffsetEdge): XY[] {
  if (one.arc !== null && other.arc !== null) return circlesMeet(one.arc, other.arc);
  if (one.arc !== null) return lineMeets(other, one.arc);
  if (other.arc !== null) return lineMeets(one, other.arc);
  const turn = one.along[0] * other.along[1] - one.along[1] * other.along[0];
  if (Math.abs(turn) < 1e-9) return [];
  const [dx, dy] = [other.start[0] - one.start[0], other.start[1] - one.start[1]];
  const t = (dx * other.along[1] - dy * other.along[0]) / turn;
  return [[one.start[0] + one.along[0] * t, one.start[1] + one.along[1] * t]];
}

interface Round {
  readonly centre: XY;
  readonly radius: number;
}

function lineMeets({ start, along: [ux, uy] }: OffsetEdge, { centre, radius }: Round): XY[] {
  const foot = (centre[0] - start[0]) * ux + (centre[1] - start[1]) * uy;
  const p: XY = [start[0] + ux * foot, start[1] + uy * foot];
  const half = Math.sqrt(radius ** 2 - apart(p, centre) ** 2);
  return Number.isNaN(half) ? [] : [half, -half].map((h) => [p[0] + ux * h, p[1] + uy * h]);
}

function circlesMeet(one: Round, other: Round): XY[] {
  const gap = apart(one.centre, other.centre);
  if (gap === 0) return [];
  const [ux, uy] = [(other.centre[0] - one.centre[0]) / gap, (other.centre[1] - one.centre[1]) / gap];
  const foot = (gap ** 2 + one.radius ** 2 - other.radius ** 2) / (2 * gap);
  const half = Math.sqrt(one.radius ** 2 - foot ** 2);
  if (Number.isNaN(half)) return [];
  return [half, -half].map((h) => [one.centre[0] + ux * foot - uy * h, one.centre[1] + uy * foot + ux * h]);
}

/** The bulge of what is left of a carried edge between its corners; null where nothing is. */
function bulgeOf({ along, arc }: OffsetEdge, start: XY, end: XY): number | null {
  if (arc === null) return (end[0] - start[0]) * along[0] + (end[1] - start[1]) * along[1] > 0 ? 0 : null;
  const angle = ([x, y]: XY): number => Math.atan2(y - arc.centre[1], x - arc.centre[0]);
  const way = Math.sign(arc.sweepRad);
  const turn = (((way * (angle(end) - angle(start))) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  return turn - Math.abs(arc.sweepRad) > Math.PI ? null : way * Math.tan(turn / 4);
}
