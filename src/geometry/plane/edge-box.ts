import { type ArcEdge, arcSpans, type Edge } from './edge.ts';
import type { Vec } from './vec.ts';

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

/** A box that is made to take in more. */
export class GrowingBox implements Box {
  minX = Number.POSITIVE_INFINITY;
  minY = Number.POSITIVE_INFINITY;
  maxX = Number.NEGATIVE_INFINITY;
  maxY = Number.NEGATIVE_INFINITY;

  takeIn({ minX, minY, maxX, maxY }: Box): void {
    this.minX = Math.min(this.minX, minX);
    this.minY = Math.min(this.minY, minY);
    this.maxX = Math.max(this.maxX, maxX);
    this.maxY = Math.max(this.maxY, maxY);
  }

  takeInPoint({ x, y }: Vec): void {
    this.minX = Math.min(this.minX, x);
    this.minY = Math.min(this.minY, y);
    this.maxX = Math.max(this.maxX, x);
    this.maxY = Math.max(this.maxY, y);
  }

  /** As it is now. */
  box(): Box {
    const { minX, minY, maxX, maxY } = this;
    return { minX, minY, maxX, maxY };
  }
}

/** The least box round several; of none, one that holds nothing. */
export function boxAround(boxes: readonly Box[]): Box {
  const around = new GrowingBox();
  for (const box of boxes) around.takeIn(box);
  return around.box();
}

/** The least box round some edges; of none, one that holds nothing. */
export function boxAroundEdges(edges: readonly Edge[]): Box {
  const around = new GrowingBox();
  for (const edge of edges) {
    if (edge.kind === 'line') {
      around.takeInPoint(edge.a);
      around.takeInPoint(edge.b);
    } else around.takeIn(boxOfEdge(edge));
  }
  return around.box();
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
