import type { Vec } from '../../geometry/plane/vec.ts';
import type { Polygon, Polygons } from '../../geometry/polygons/polygons.ts';
import { joinedSpans } from '../../geometry/spans.ts';

/** Rings about the crank axis, one beside the other, by the radii between them, mm. */
export type Rings = readonly number[];

/** A range of angle about the axis, radians; it may run on past ±π. */
export type Sector = readonly [fromRad: number, toRad: number];

/** What a solid covers of each ring: as far as its middle tells, and for certain right across. */
export interface RingCover {
  readonly middle: readonly (readonly Sector[])[];
  readonly surely: readonly (readonly Sector[])[];
}

interface Crossing {
  readonly at: number;
  /** +1 where metal begins, gone round anticlockwise, −1 where it ends. */
  readonly step: number;
}

/** What is found of one ring. */
interface Ring {
  readonly fromMm: number;
  readonly middleMm: number;
  readonly toMm: number;
  readonly crossings: Crossing[];
  /** Between these an edge runs in the ring: beside all of them it is covered right across or not at all. */
  readonly edges: Sector[];
}

const circleRad = 2 * Math.PI;

/** What polygons with metal on their left cover of rings. */
export function ringCover(polygons: Polygons, rings: Rings): RingCover {
  const found = rings.slice(1).map((toMm, k): Ring => {
    const fromMm = rings[k] as number;
    return { fromMm, toMm, middleMm: (fromMm + toMm) / 2, crossings: [], edges: [] };
  });
  for (const polygon of polygons) {
    let a = polygon.at(-1) as Vec;
    for (const b of polygon) {
      takeEdge(a, b, found);
      a = b;
    }
  }
  const middle = found.map(({ crossings, middleMm }) =>
    crossings.length > 0 ? metalBetween(crossings) : wholeOrNothing(polygons, middleMm),
  );
  return { middle, surely: middle.map((sectors, k) => without(sectors, (found[k] as Ring).edges)) };
}

/** Where an edge crosses the middles of rings, and between what angles it runs in each. */
function takeEdge(a: Vec, b: Vec, rings: readonly Ring[]): void {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const squared = dx * dx + dy * dy;
  if (squared === 0) return;
  const foot = -(a.x * dx + a.y * dy) / squared;
  const heightSquared = (a.x * b.y - a.y * b.x) ** 2 / squared;
  const [ra, rb] = [Math.hypot(a.x, a.y), Math.hypot(b.x, b.y)];
  const leastMm = foot > 0 && foot < 1 ? Math.sqrt(heightSquared) : Math.min(ra, rb);
  const mostMm = Math.max(ra, rb);
  const angleAt = (t: number): number => Math.atan2(a.y + t * dy, a.x + t * dx);
  /** How far from its foot, as a share of its length, the edge's line is so far from the axis. */
  const reach = (r: number): number => Math.sqrt(Math.max(0, r * r - heightSquared) / squared);
  for (let k = firstReaching(rings, leastMm); k < rings.length; k++) {
    const { fromMm, middleMm, toMm, crossings, edges } = rings[k] as Ring;
    if (fromMm > mostMm) return;
    const crosses = middleMm * middleMm > heightSquared;
    for (const side of [-1, 1]) {
      const t = foot + side * reach(middleMm);
      // an end counts with the edge that starts there; going outward an edge has metal on the anticlockwise side
      if (crosses && t >= 0 && t < 1) crossings.push({ at: angleAt(t), step: side });
      const [near, far] = [foot + side * reach(fromMm), foot + side * reach(toMm)];
      const [from, to] = [Math.max(0, Math.min(near, far)), Math.min(1, Math.max(near, far))];
      if (from <= to) edges.push(sectorOf(angleAt(from), angleAt(to)));
    }
  }
}

/** The first ring that reaches out to a radius. */
function firstReaching(rings: readonly Ring[], r: number): number {
  let [low, high] = [-1, rings.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((rings[middle] as Ring).toMm < r) low = middle;
    else high = middle;
  }
  return high;
}

/** Two angles along one edge, less than half a circle apart, as a sector. */
function sectorOf(a: number, b: number): Sector {
  const near = b - a > Math.PI ? b - circleRad : b - a < -Math.PI ? b + circleRad : b;
  return near < a ? [near, a] : [a, near];
}

function metalBetween(crossings: readonly Crossing[]): Sector[] {
  const sorted = crossings.toSorted((a, b) => a.at - b.at || b.step - a.step);
  let winding = 0;
  let least = 0;
  for (const { step } of sorted) {
    winding += step;
    least = Math.min(least, winding);
  }
  winding = -least;
  const sectors: Sector[] = [];
  let from = -Math.PI;
  for (const { at, step } of [...sorted, { at: Math.PI, step: Number.NEGATIVE_INFINITY }]) {
    const before = winding;
    winding += step;
    if (before <= 0 && winding > 0) from = at;
    if (before > 0 && winding <= 0) sectors.push([from, at]);
  }
  return joinedRound(sectors);
}

/** The same with what runs on past ±π told as one. */
function joinedRound(sectors: Sector[]): Sector[] {
  const [first, last] = [sectors[0], sectors.at(-1)];
  if (first === undefined || last === undefined || first === last) return sectors;
  if (first[0] !== -Math.PI || last[1] !== Math.PI) return sectors;
  return [...sectors.slice(1, -1), [last[0], first[1] + circleRad]];
}

const wholeOrNothing = (polygons: Polygons, r: number): Sector[] =>
  coversAt(polygons, r) ? [[-Math.PI, Math.PI]] : [];

export const coversAxis = (polygons: Polygons): boolean => coversAt(polygons, 0);

const coversAt = (polygons: Polygons, r: number): boolean =>
  polygons.reduce((sum, polygon) => sum + windingRound(polygon, r), 0) > 0;

/** How often a polygon goes round the point of the x axis at a radius. */
function windingRound(polygon: Polygon, r: number): number {
  let winding = 0;
  let a = polygon.at(-1) as Vec;
  for (const b of polygon) {
    if (a.y <= 0 !== b.y <= 0 && a.x - (a.y * (b.x - a.x)) / (b.y - a.y) > r) winding += a.y <= 0 ? 1 : -1;
    a = b;
  }
  return winding;
}

function without(sectors: readonly Sector[], taken: readonly Sector[]): Sector[] {
  let left: Sector[] = [...sectors];
  // the edges of a round outline run on into one another
  for (const [from, to] of joinedSpans(taken)) {
    for (const turn of [-circleRad, 0, circleRad]) {
      if (left.some(([a, b]) => from + turn < b && to + turn > a)) {
        left = left.flatMap((sector) => cut(sector, from + turn, to + turn));
      }
    }
  }
  return left;
}

function cut(sector: Sector, from: number, to: number): Sector[] {
  const [a, b] = sector;
  if (to <= a || from >= b) return [sector];
  const parts: Sector[] = [
    [a, from],
    [to, b],
  ];
  return parts.filter(([start, end]) => end > start);
}
