import { type ArcEdge, arcSpans, type Edge } from './edge.ts';

/** A box along the axes, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The least box round an edge; an arc's apexes count where the arc reaches them. */
export function boxOfEdge(edge: Edge): Box {
  const ends = {
    minX: Math.min(edge.a.x, edge.b.x),
    minY: Math.min(edge.a.y, edge.b.y),
    maxX: Math.max(edge.a.x, edge.b.x),
    maxY: Math.max(edge.a.y, edge.b.y),
  };
  return edge.kind === 'line' ? ends : withApexes(ends, edge);
}

function withApexes(ends: Box, arc: ArcEdge): Box {
  const { centre, radius } = arc;
  return {
    minX: arcSpans(arc, Math.PI) ? Math.min(ends.minX, centre.x - radius) : ends.minX,
    minY: arcSpans(arc, -Math.PI / 2) ? Math.min(ends.minY, centre.y - radius) : ends.minY,
    maxX: arcSpans(arc, 0) ? Math.max(ends.maxX, centre.x + radius) : ends.maxX,
    maxY: arcSpans(arc, Math.PI / 2) ? Math.max(ends.maxY, centre.y + radius) : ends.maxY,
  };
}

/** The least box round several; of none, one that holds nothing. */
export function boxAround(boxes: readonly Box[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** The least box round some edges; of none, one that holds nothing. */
export function boxAroundEdges(edges: readonly Edge[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const edge of edges) {
    const { a, b } = edge;
    minX = Math.min(minX, a.x, b.x);
    minY = Math.min(minY, a.y, b.y);
    maxX = Math.max(maxX, a.x, b.x);
    maxY = Math.max(maxY, a.y, b.y);
    if (edge.kind === 'line') continue;
    const box = boxOfEdge(edge);
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** A box with so much more on every side, mm. */
export const boxGrown = ({ minX, minY, maxX, maxY }: Box, byMm: number): Box => ({
  minX: minX - byMm,
  minY: minY - byMm,
  maxX: maxX + byMm,
  maxY: maxY + byMm,
});

export const boxesMeet = (a: Box, b: Box, withinMm: number): boolean =>
  a.minX - b.maxX <= withinMm &&
  b.minX - a.maxX <= withinMm &&
  a.minY - b.maxY <= withinMm &&
  b.minY - a.maxY <= withinMm;

/** How far apart two boxes are, mm; 0 where they meet. */
export const gapOfBoxesMm = (a: Box, b: Box): number =>
  Math.hypot(Math.max(0, a.minX - b.maxX, b.minX - a.maxX), Math.max(0, a.minY - b.maxY, b.minY - a.maxY));
