import { type Edge, edgeOfBulge, edgeOfCircle } from './edge.ts';
import { apply, type Rigid } from './rigid.ts';
import { type Vec, vec } from './vec.ts';

/** A vertex of an outline; `bulge` = tan(a quarter of the arc's angle) of the edge that starts here. */
export interface Vertex extends Vec {
  readonly bulge: number;
}

export interface PathLoop {
  readonly kind: 'path';
  readonly vertices: readonly Vertex[];
}

export interface CircleLoop {
  readonly kind: 'circle';
  readonly centre: Vec;
  readonly radius: number;
}

/** One closed outline; closed of itself, either winding. */
export type Loop = PathLoop | CircleLoop;

/** A solid of the plane: its loops by even-odd nesting. */
export type Region = readonly Loop[];

export const circleLoop = (centre: Vec, radius: number): CircleLoop => ({ kind: 'circle', centre, radius });

/** A loop of straight edges through `points`. */
export const polygonLoop = (points: readonly Vec[]): PathLoop => ({
  kind: 'path',
  vertices: points.map((p) => ({ x: p.x, y: p.y, bulge: 0 })),
});

/** The edges of a loop in order; a circle is one whole arc. */
export function edgesOf(loop: Loop): Edge[] {
  if (loop.kind === 'circle') return [edgeOfCircle(loop.centre, loop.radius)];
  const { vertices } = loop;
  return vertices.map((v, i) => edgeOfBulge(v, vertices[(i + 1) % vertices.length] as Vertex, v.bulge));
}

/** How many edges loops have, without making them. */
export const edgeCountOf = (region: Region): number => region.reduce((sum, loop) => sum + edgeCountOfLoop(loop), 0);

export const edgeCountOfLoop = (loop: Loop): number => (loop.kind === 'circle' ? 1 : loop.vertices.length);

export const edgesOfRegion = (region: Region): Edge[] => region.flatMap(edgesOf);

export function moveLoop(loop: Loop, motion: Rigid): Loop {
  if (loop.kind === 'circle') return circleLoop(apply(motion, loop.centre), loop.radius);
  return {
    kind: 'path',
    vertices: loop.vertices.map((v) => {
      const { x, y } = apply(motion, v);
      return { x, y, bulge: v.bulge };
    }),
  };
}

export const moveRegion = (region: Region, motion: Rigid): Region => region.map((loop) => moveLoop(loop, motion));

/** The loop mirrored x → −x: vertex order kept, bulges negated. */
export function mirrorLoop(loop: Loop): Loop {
  if (loop.kind === 'circle') return circleLoop(mirrorPoint(loop.centre), loop.radius);
  return {
    kind: 'path',
    vertices: loop.vertices.map(({ x, y, bulge }) => ({ x: 0 - x, y, bulge: bulge === 0 ? 0 : -bulge })),
  };
}

// 0 − x, so that no −0 reaches an answer
export const mirrorPoint = (p: Vec): Vec => vec(0 - p.x, p.y);

export const mirrorRegion = (region: Region): Region => region.map(mirrorLoop);
