import type { LoopFile } from '../../../src/files/part-file.ts';
import { apart, arcOf, xyOf } from '../../job/arc.ts';
import { at, type PointList } from '../../job/point-edits.ts';

// Path data in a part's own drawing, y up: there SVG's sweep flag 1 is anticlockwise.

/** An outline as path data, its arcs exact. */
export function loopPath(loop: LoopFile): string {
  if ('circle' in loop) return circlePath(loop.circle, loop.radius);
  return `${edges(loop, loop.length)}Z`;
}

export const circlePath = ([x, y]: readonly [number, number], r: number): string =>
  `M${x + r} ${y}A${r} ${r} 0 1 1 ${x - r} ${y}A${r} ${r} 0 1 1 ${x + r} ${y}Z`;

export const runPath = (points: PointList): string => edges(points, points.length - 1);

function edges(points: PointList, count: number): string {
  const [x, y] = at(points, 0);
  let path = `M${x} ${y}`;
  for (let i = 0; i < count; i++) path += edgePath(points, i);
  return path;
}

function edgePath(points: PointList, i: number): string {
  const [a, b] = [at(points, i), at(points, i + 1)];
  const bulge = a[2] ?? 0;
  const end = `${b[0]} ${b[1]}`;
  if (bulge === 0 || apart(xyOf(a), xyOf(b)) === 0) return `L${end}`;
  const { radius } = arcOf(xyOf(a), xyOf(b), bulge);
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} ${end}`;
}
