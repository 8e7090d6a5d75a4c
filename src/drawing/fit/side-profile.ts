import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { edgeCountOf, edgesOf, edgesOfRegion, type Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { thinLoop } from '../../geometry/plane/thin-loop.ts';
import { angleOf, sub } from '../../geometry/plane/vec.ts';
import { crossingsAt } from '../scene/hatch.ts';

/** Which side of the joint one stands at, looking along the mating face. */
export type SeenFrom = 'right' | 'left';

/** A piece of a section's side: between two heights, and how far out it stands towards the eye. */
export interface Strip {
  readonly fromY: number;
  readonly toY: number;
  readonly reachMm: number;
}

/** A corner that turns by less leaves no edge worth drawing. */
const cornerRad = 0.25;
/** A step of less between two heights leaves none either, mm. */
const stepMm = 0.5;
/** How close under and over an edge one looks, mm. */
const closeMm = 1e-4;
/** Above so many edges heights are taken at even steps, of outlines drawn by less than a quarter of a step. */
const mostEdges = 400;
const evenSteps = 300;

/**
 * A section as seen from the side: strips between the heights where an edge shows, none where one sees past it.
 * Heights are exact for outlines of up to a few hundred edges.
 */
export function stripsOf(whole: Region, from: SeenFrom): Strip[] {
  const region = drawnByLess(whole);
  const edges = edgesOfRegion(region);
  const corners = cornersOf(region);
  const reachAt = (y: number): number | null => outermost(edges, y, from);
  const edgeShows = (y: number): boolean => {
    const [under, over] = [reachAt(y - closeMm), reachAt(y + closeMm)];
    if (under === null || over === null || Math.abs(under - over) > stepMm) return true;
    return corners.some((corner) => corner.y === y && Math.abs(sign(from) * corner.x - over) < stepMm);
  };
  const heights = heightsOf(region, edges, whole === region);
  const strips: Strip[] = [];
  heights.slice(1).forEach((toY, i) => {
    const fromY = heights[i] as number;
    const reachMm = reachAt((fromY + toY) / 2);
    if (reachMm === null) return;
    const below = strips.at(-1);
    if (below?.toY === fromY && !edgeShows(fromY)) strips[strips.length - 1] = { ...below, toY };
    else strips.push({ fromY, toY, reachMm });
  });
  return strips;
}

function drawnByLess(region: Region): Region {
  if (edgeCountOf(region) <= mostEdges) return region;
  const { minY, maxY } = boxOfRegion(region);
  return region.map((loop) => thinLoop(loop, (maxY - minY) / evenSteps / 4));
}

const sign = (from: SeenFrom): 1 | -1 => (from === 'right' ? 1 : -1);

function outermost(edges: readonly Edge[], y: number, from: SeenFrom): number | null {
  const xs = crossingsAt(edges, y);
  const x = from === 'right' ? xs.at(-1) : xs[0];
  return x === undefined ? null : sign(from) * x;
}

function heightsOf(region: Region, edges: readonly Edge[], isWhole: boolean): number[] {
  const { minY, maxY } = boxOfRegion(region);
  if (!isWhole) {
    return Array.from({ length: evenSteps + 1 }, (_, i) => minY + ((maxY - minY) * i) / evenSteps);
  }
  const ends = edges.map(({ a }) => a.y);
  const tops = edges.flatMap((edge) =>
    edge.kind === 'line' ? [] : [edge.centre.y - edge.radius, edge.centre.y + edge.radius],
  );
  const inside = [...ends, ...tops].filter((y) => y >= minY && y <= maxY);
  return [...new Set([minY, ...inside, maxY])].sort((a, b) => a - b);
}

function cornersOf(region: Region) {
  return region.flatMap((loop) => {
    const edges = edgesOf(loop);
    return edges.flatMap((edge, i) => {
      const before = edges.at(i - 1) as Edge;
      const turn = Math.abs(directionAt(edge, 0) - directionAt(before, 1)) % (2 * Math.PI);
      return Math.min(turn, 2 * Math.PI - turn) > cornerRad ? [edge.a] : [];
    });
  });
}

function directionAt(edge: Edge, at: 0 | 1): number {
  if (edge.kind === 'line') return angleOf(sub(edge.b, edge.a));
  const outward = angleOf(sub(pointOnEdge(edge, at), edge.centre));
  return outward + (Math.sign(edge.sweepRad) * Math.PI) / 2;
}
