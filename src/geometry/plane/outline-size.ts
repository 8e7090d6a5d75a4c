import { Arc, Box, Point, Segment } from '@flatten-js/core';
import type { Edge } from './edge.ts';
import { edgesOfRegion, type Region } from './loop.ts';
import type { Vec } from './vec.ts';

/** How large outlines are, in their own unit of length: what one holds a rule against. */
export interface OutlineSize {
  readonly width: number;
  readonly height: number;
  /** Length all the way round every outline. */
  readonly round: number;
}

/** Width, height and length round of outlines of lines and arcs, arcs exact. */
export function outlineSize(region: Region): OutlineSize {
  const shapes = edgesOfRegion(region).map(shapeOf);
  const box = shapes.reduce((whole, shape) => whole.merge(shape.box), new Box());
  return {
    width: box.xmax - box.xmin,
    height: box.ymax - box.ymin,
    round: shapes.reduce((sum, { length }) => sum + length, 0),
  };
}

function shapeOf(edge: Edge): Segment | Arc {
  if (edge.kind === 'line') return new Segment(pointOf(edge.a), pointOf(edge.b));
  const { centre, radius, startRad, sweepRad } = edge;
  return new Arc(pointOf(centre), radius, startRad, startRad + sweepRad, sweepRad > 0);
}

const pointOf = ({ x, y }: Vec): Point => new Point(x, y);
