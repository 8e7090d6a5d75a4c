import type { Vertex } from '../../geometry/plane/loop.ts';
import { add, distance, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { DrawnShape } from '../drawing.ts';
import { bulgeThrough } from '../outlines/arcs-along.ts';
import { closedRun, type Shape } from '../outlines/shape.ts';
import { strokesThrough } from '../outlines/stroke.ts';
import type { Cells } from './csv-cells.ts';

const sectionKinds = ['point', 'arc', 'circle', 'rib'] as const;

/** The features of a section's rows, then its outlines point by point. */
export function shapesOf(layer: string, rows: readonly Cells[]): DrawnShape[] {
  const points = new Map<string, OutlinePoint[]>();
  const drawn: DrawnShape[] = [];
  let loop = '';
  for (const cells of rows) {
    loop = cells.text('loop') ?? loop;
    const kind = cells.word('kind', sectionKinds) ?? 'point';
    const place = `line ${cells.line}`;
    if (kind === 'circle') drawn.push({ shape: circle(cells), layer, place });
    else if (kind === 'rib') drawn.push({ shape: rib(cells), layer, place });
    else if (kind === 'arc' || saysWhere(cells)) pushTo(points, loop, pointOf(cells, kind));
  }
  return [...drawn, ...[...points.values()].map((loop) => outline(layer, loop))];
}

function pushTo(points: Map<string, OutlinePoint[]>, loop: string, point: OutlinePoint): void {
  const there = points.get(loop);
  if (there === undefined) points.set(loop, [point]);
  else there.push(point);
}

/** A row may also only say the depth of its section, or how it was got. */
const saysWhere = (cells: Cells): boolean => ['kind', 'x', 'y', 'bulge'].some((column) => cells.text(column) !== null);

function circle(cells: Cells): Shape {
  const [centre, diameter] = [vec(cells.needed('x'), cells.needed('y')), cells.size('diameter')];
  if (cells.text('diameter') === null) cells.refuse('diameter', 'nothing', 'a diameter');
  return { kind: 'circle', centre, radius: (diameter ?? 1) / 2 };
}

function rib(cells: Cells): Shape {
  const root = vec(cells.needed('x'), cells.needed('y'));
  const tip = vec(cells.needed('x2'), cells.needed('y2'));
  if (cells.text('width') === null) cells.refuse('width', 'nothing', 'how thick the rib is');
  const width = cells.size('width') ?? 1;
  const tipWidth = cells.size('tip width') ?? width;
  const along = sub(tip, root);
  const aside = scale(vec(-along.y, along.x), 0.5 / distance(root, tip));
  const corners = [
    add(root, scale(aside, width)),
    sub(root, scale(aside, width)),
    sub(tip, scale(aside, tipWidth)),
    add(tip, scale(aside, tipWidth)),
  ];
  return closedRun(
    strokesThrough(
      corners.map((corner) => ({ ...corner, bulge: 0 })),
      true,
    ),
  );
}

/** A point of an outline; one `onArc` only shapes the edge it lies on. */
interface OutlinePoint {
  readonly cells: Cells;
  readonly at: Vec;
  readonly bulge: number;
  readonly onArc: boolean;
}

const pointOf = (cells: Cells, kind: 'point' | 'arc'): OutlinePoint => ({
  cells,
  at: vec(cells.needed('x'), cells.needed('y')),
  bulge: cells.number('bulge') ?? 0,
  onArc: kind === 'arc',
});

function outline(layer: string, points: readonly OutlinePoint[]): DrawnShape {
  const [first] = points as [OutlinePoint, ...OutlinePoint[]];
  const vertices = points.flatMap((point, i) => (point.onArc ? [] : [vertexAt(point, i + 1, points)]));
  if (vertices.length < 2) first.cells.refuse('section', 'an outline of one point', 'two points or more');
  return { shape: closedRun(strokesThrough(vertices, true)), layer, place: `line ${first.cells.line}` };
}

/** A corner with the bulge of the edge after it: its own, or that of the arc through the point marked as on it. */
function vertexAt(corner: OutlinePoint, after: number, points: readonly OutlinePoint[]): Vertex {
  const [next, overNext] = [points[after % points.length], points[(after + 1) % points.length]] as [
    OutlinePoint,
    OutlinePoint,
  ];
  if (!next.onArc) return { ...corner.at, bulge: corner.bulge };
  if (overNext.onArc) overNext.cells.refuse('kind', 'a second arc point in a row', "one point between an arc's ends");
  if (corner.bulge !== 0) corner.cells.refuse('bulge', 'a bulge before an arc point', 'one or the other');
  return { ...corner.at, bulge: bulgeThrough(corner.at, next.at, overNext.at) };
}
