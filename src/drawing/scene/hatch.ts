import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion, moveRegion, polygonLoop, type Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { apply, rigid } from '../../geometry/plane/rigid.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { isEmpty, rectangle } from './frame.ts';

/** Where between two multiples of the pitch the lines run: off every vertex a person would write down. */
const offGrid = 0.3819660112501051;

/**
 * The straight pieces of hatching at `angleRad`, `pitchMm` apart, that lie inside a region (even-odd, arcs exact), in
 * the region's own mm. They leave out the boxes of words that stand in it.
 */
export function hatchSegments(
  region: Region,
  angleRad: number,
  pitchMm: number,
  words: readonly Box[] = [],
): readonly (readonly [Vec, Vec])[] {
  const turned = rigid(-angleRad, vec(0, 0));
  const level = moveRegion(region, turned);
  const box = boxOfRegion(level);
  if (isEmpty(box)) return [];
  const back = rigid(angleRad, vec(0, 0));
  const edges = edgesOfRegion(level);
  const gaps = words.map((box) => edgesOfRegion(moveRegion([polygonLoop(rectangle(box))], turned)));
  const segments: [Vec, Vec][] = [];
  for (let row = Math.ceil(box.minY / pitchMm - offGrid); (row + offGrid) * pitchMm < box.maxY; row++) {
    const y = (row + offGrid) * pitchMm;
    for (const [from, to] of without(
      spansOf(crossingsAt(edges, y)),
      gaps.flatMap((gap) => spansOf(crossingsAt(gap, y))),
    )) {
      segments.push([apply(back, vec(from, y)), apply(back, vec(to, y))]);
    }
  }
  return segments;
}

type Span = readonly [from: number, to: number];

/** From where to where a level line is inside, by where it crosses. */
const spansOf = (xs: readonly number[]): Span[] =>
  xs.flatMap((from, i) => (i % 2 === 0 && i + 1 < xs.length ? [[from, xs[i + 1] as number] as const] : []));

/** What is left of spans without the gaps. */
const without = (spans: readonly Span[], gaps: readonly Span[]): readonly Span[] =>
  gaps.reduce(
    (left, [from, to]) =>
      left.flatMap(([a, b]): Span[] => {
        if (to <= a || from >= b) return [[a, b]];
        return [...(a < from ? [[a, from] as const] : []), ...(to < b ? [[to, b] as const] : [])];
      }),
    spans,
  );

/** Where a level line crosses the edges, from left to right. */
export function crossingsAt(edges: readonly Edge[], y: number): number[] {
  const xs: number[] = [];
  for (const edge of edges) {
    const { a, b } = edge;
    if (edge.kind === 'arc') xs.push(...arcCrossings(edge, y));
    else if (a.y <= y !== b.y <= y) xs.push(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
  }
  return xs.sort((a, b) => a - b);
}

/** An arc is cut at the tops and bottoms of its circle, so that each piece crosses a level once at most. */
function arcCrossings(arc: Extract<Edge, { kind: 'arc' }>, y: number): number[] {
  const rise = y - arc.centre.y;
  if (Math.abs(rise) >= arc.radius) return [];
  const half = Math.sqrt(arc.radius * arc.radius - rise * rise);
  const stops = turningPoints(arc);
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] as number;
    const heights = [heightAt(arc, from), heightAt(arc, to)] as const;
    if (heights[0] <= y === heights[1] <= y) return [];
    const right = Math.cos(arc.startRad + (arc.sweepRad * (from + to)) / 2) > 0;
    return [right ? arc.centre.x + half : arc.centre.x - half];
  });
}

/** The ends themselves, not their sines, so that neighbours agree on which side of a level they meet. */
function heightAt(arc: Extract<Edge, { kind: 'arc' }>, at: number): number {
  if (at === 0) return arc.a.y;
  return at === 1 ? arc.b.y : pointOnEdge(arc, at).y;
}

function turningPoints({ startRad, sweepRad }: Extract<Edge, { kind: 'arc' }>): number[] {
  const low = Math.min(startRad, startRad + sweepRad);
  const high = Math.max(startRad, startRad + sweepRad);
  const turns: number[] = [];
  for (let k = Math.ceil((low - Math.PI / 2) / Math.PI); Math.PI / 2 + k * Math.PI < high; k++) {
    const at = (Math.PI / 2 + k * Math.PI - startRad) / sweepRad;
    if (at > 0 && at < 1) turns.push(at);
  }
  return [0, ...turns.sort((a, b) => a - b), 1];
}
