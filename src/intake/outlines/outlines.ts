import { circleLoop, type Loop } from '../../geometry/plane/loop.ts';
import type { Vec } from '../../geometry/plane/vec.ts';
import { scaled } from '../drawing/affine.ts';
import type { DrawnShape } from '../drawing.ts';
import { type Branch, type Chaining, chainLines } from './chain.ts';
import type { Gap } from './gaps.ts';
import { drawnAsArcs, drawnAsCurves, loopFrom } from './loop-from.ts';
import { type OpenLine, runTheSame } from './open-line.ts';
import { PointGrid } from './point-grid.ts';
import { mappedShape, type Shape } from './shape.ts';
import { verticesAlong } from './stroke.ts';
import { curveToleranceMm, sameEndMm } from './tolerances.ts';

/** The closed outlines that shapes make, and what stood in the way of more. */
export interface Outlines {
  readonly loops: readonly Loop[];
  readonly joined: readonly Gap[];
  readonly gaps: readonly Gap[];
  readonly branches: readonly Branch[];
  /** Things drawn over another, lines of no length, and closed lines round nothing; none of them is kept. */
  readonly doubles: number;
  readonly dots: number;
  readonly empty: number;
  readonly hasCurves: boolean;
}

/** Closed loops (mm) from shapes in units of `mm`, lines chained end to end and gaps up to `joinMm` closed. */
export function outlinesOf(shapes: readonly DrawnShape[], mm: number, joinMm: number): Outlines {
  const sized = shapes.map((drawn) => ({ ...drawn, shape: mappedShape(scaled(mm), drawn.shape) }));
  const closed: (Loop | null)[] = [];
  const lines: OpenLine[] = [];
  for (const { shape, layer, place } of sized) {
    if (shape.kind === 'circle') closed.push(circleLoop(shape.centre, shape.radius));
    else {
      const vertices = verticesAlong(shape.strokes, curveToleranceMm);
      if (shape.closed) closed.push(loopFrom(vertices.slice(0, -1), slackOf(isCurved(shape))));
      else lines.push({ vertices, layer, place });
    }
  }
  const chaining = chainLines(lines, joinMm);
  const hasCurves = sized.some(({ shape }) => isCurved(shape));
  closed.push(...chaining.closed.map((vertices) => loopFrom(vertices, slackOf(hasCurves))));
  return summary(closed, chaining, hasCurves);
}

function summary(closed: readonly (Loop | null)[], chaining: Chaining, hasCurves: boolean): Outlines {
  const solid = closed.filter((loop) => loop !== null);
  const loops = withoutDoubles(solid);
  const { joined, gaps, branches, dots } = chaining;
  const doubles = chaining.doubles + solid.length - loops.length;
  return { loops, joined, gaps, branches, doubles, dots, empty: closed.length - solid.length, hasCurves };
}

const slackOf = (curved: boolean) => (curved ? drawnAsCurves : drawnAsArcs);

const isCurved = (shape: Shape): boolean => shape.kind === 'run' && shape.strokes.some(({ kind }) => kind === 'curve');

/** Loops that start at one place are compared with the first few kept there. */
const mostCompared = 32;

function withoutDoubles(loops: readonly Loop[]): Loop[] {
  const anchors = loops.map((loop) => (loop.kind === 'circle' ? loop.centre : (loop.vertices[0] as Vec)));
  const grid = new PointGrid(anchors, sameEndMm);
  return loops.filter((loop, i) => {
    const there = grid.near(anchors[i] as Vec, sameEndMm, mostCompared);
    if (there.some((other) => areTheSame(loop, loops[other] as Loop))) return false;
    if (there.length < mostCompared) grid.add(i);
    return true;
  });
}

function areTheSame(one: Loop, other: Loop): boolean {
  if (one.kind === 'circle') return other.kind === 'circle' && Math.abs(one.radius - other.radius) <= sameEndMm;
  if (other.kind === 'circle') return false;
  const around = (loop: typeof one) => [...loop.vertices, ...loop.vertices.slice(0, 1)];
  return runTheSame(around(one), around(other));
}
