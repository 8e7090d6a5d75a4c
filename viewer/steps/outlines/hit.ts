import type { JobFile } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import { alongEdge, nearestAlong, type XY, xyOf } from '../../job/arc.ts';
import { holderAt, holdersOf, loopLists, type Place } from '../../job/part-edits.ts';
import { at, type PointList } from '../../job/point-edits.ts';
import { runsOf } from '../../job/run-edits.ts';
import { toPane, toPlane, type View } from '../../stage/view.ts';
import { tapped } from '../../words/outlines.ts';
import { circleOf, pointsOf, type Selection } from './selection.ts';

export const snapPx = 12;

export interface Sheet {
  readonly job: JobFile;
  readonly file: string;
  readonly view: View;
}

const unitsOf = ({ job, file }: Sheet): 'mm' | 'in' => job.parts[file]?.units ?? 'mm';

/** Where a point of the part's drawing is in the pane. */
export function inPane(sheet: Sheet, [x, y]: XY): Vec {
  const mm = mmIn(unitsOf(sheet));
  return toPane(sheet.view, { x: x * mm, y: y * mm });
}

/** Where a point of the pane is in the part's drawing. */
export function inDrawing(sheet: Sheet, place: Vec): XY {
  const units = unitsOf(sheet);
  const { x, y } = toPlane(sheet.view, place);
  return [tapped(x, units), tapped(y, units)];
}

const pxApart = (a: Vec, b: Vec): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The nearest of some points within reach; null where none is. */
function nearest<T>(sheet: Sheet, place: Vec, reachPx: number, all: readonly (readonly [XY, T])[]): T | null {
  let best: T | null = null;
  let least = reachPx;
  for (const [point, what] of all) {
    const px = pxApart(inPane(sheet, point), place);
    if (px <= least) [least, best] = [px, what];
  }
  return best;
}

/** What of the chosen thing a press takes hold of. */
export type Handle =
  | { readonly kind: 'vertex'; readonly vertex: number }
  | { readonly kind: 'bend'; readonly edge: number }
  | { readonly kind: 'centre' }
  | { readonly kind: 'rim' }
  | { readonly kind: 'hole'; readonly hole: number };

/** A handle in the middle of an edge shorter than this would be under the points' own. */
const leastEdgePx = 56;

/** The edges that have a handle in their middle. */
export function bendable(sheet: Sheet, points: PointList, closed: boolean): number[] {
  const count = closed ? points.length : points.length - 1;
  return Array.from({ length: count }, (_, i) => i).filter(
    (i) => pxApart(inPane(sheet, xyOf(at(points, i))), inPane(sheet, xyOf(at(points, i + 1)))) >= leastEdgePx,
  );
}

export const middleOf = (points: PointList, edge: number): XY =>
  alongEdge(xyOf(at(points, edge)), xyOf(at(points, edge + 1)), at(points, edge)[2] ?? 0, 0.5);

export function handleAt(sheet: Sheet, chosen: Selection | null, place: Vec, reachPx: number): Handle | null {
  const points = pointsOf(sheet.job, sheet.file, chosen);
  const circle = circleOf(sheet.job, sheet.file, chosen);
  if (points !== null) {
    const vertices = points.map((v, vertex) => [xyOf(v), { kind: 'vertex', vertex }] as const);
    const middles = bendable(sheet, points, chosen?.kind === 'loop').map(
      (edge) => [middleOf(points, edge), { kind: 'bend', edge }] as const,
    );
    return nearest<Handle>(sheet, place, reachPx, vertices) ?? nearest<Handle>(sheet, place, reachPx, middles);
  }
  if (circle !== null) {
    const [x, y] = circle.circle;
    return nearest<Handle>(sheet, place, reachPx, [
      [[x, y], { kind: 'centre' }],
      [[x + circle.radius, y], { kind: 'rim' }],
    ]);
  }
  const hole = chosen?.kind === 'hole' ? sheet.job.parts[sheet.file]?.holes?.[chosen.hole] : undefined;
  if (chosen?.kind !== 'hole' || hole === undefined) return null;
  return nearest<Handle>(sheet, place, reachPx, [[hole.at, { kind: 'hole', hole: chosen.hole }]]);
}

/** The edge of the chosen outline or run under a place. */
export function edgeAt(sheet: Sheet, points: PointList, closed: boolean, place: Vec, reachPx: number): number | null {
  const p = inDrawing(sheet, place);
  const count = closed ? points.length : points.length - 1;
  const nearests = Array.from({ length: count }, (_, i) => [nearestOn(points, i, p), i] as const);
  return nearest(sheet, place, reachPx, nearests);
}

function nearestOn(points: PointList, i: number, p: XY): XY {
  const [a, b, bulge] = [xyOf(at(points, i)), xyOf(at(points, i + 1)), at(points, i)[2] ?? 0];
  return alongEdge(a, b, bulge, nearestAlong(a, b, bulge, p));
}

/** The outline, run or hole under a place. */
export function thingAt(sheet: Sheet, place: Vec, reachPx: number): Selection | null {
  const { job, file } = sheet;
  const part = job.parts[file];
  if (part === undefined) return null;
  const p = inDrawing(sheet, place);
  const candidates: (readonly [XY, Selection])[] = [];
  for (const list of loopLists) {
    holdersOf(part, list).forEach((_, index) => {
      candidates.push(...loopsAt(sheet, { list, index }, p));
    });
  }
  runsOf(job).forEach((run, i) => {
    if (run.part !== file) return;
    const chosen: Selection = { kind: 'run', run: i, vertex: null };
    if (run.points.length === 1) candidates.push([xyOf(at(run.points, 0)), chosen]);
    for (let e = 0; e + 1 < run.points.length; e++) candidates.push([nearestOn(run.points, e, p), chosen]);
  });
  (part.holes ?? []).forEach((hole, i) => {
    candidates.push([hole.at, { kind: 'hole', hole: i }]);
  });
  return nearest(sheet, place, reachPx, candidates);
}

/** The hole within reach of a place. */
export const holeAt = (sheet: Sheet, place: Vec, reachPx: number): number | null =>
  nearest(
    sheet,
    place,
    reachPx,
    (sheet.job.parts[sheet.file]?.holes ?? []).map(({ at }, i) => [at, i] as const),
  );

function loopsAt({ job, file }: Sheet, place: Place, p: XY): (readonly [XY, Selection])[] {
  const part = job.parts[file];
  const loops = (part && holderAt(part, place)?.loops) ?? [];
  return loops.flatMap((loop, i): (readonly [XY, Selection])[] => {
    const chosen: Selection = { kind: 'loop', place, loop: i, vertex: null };
    if (!('circle' in loop)) return loop.map((_, e) => [nearestOn(loop, e, p), chosen] as const);
    const [dx, dy] = [p[0] - loop.circle[0], p[1] - loop.circle[1]];
    const out = loop.radius / (Math.hypot(dx, dy) || 1);
    return [[[loop.circle[0] + dx * out, loop.circle[1] + dy * out], chosen]];
  });
}

/** A point another point or hole is so near to that it is meant; `but` is left out. Null where none is. */
export function snapAt(sheet: Sheet, place: Vec, but: (point: XY) => boolean): XY | null {
  const { job, file } = sheet;
  const part = job.parts[file];
  if (part === undefined) return null;
  const loops = loopLists.flatMap((list) => holdersOf(part, list).flatMap((holder) => holder.loops));
  const points = [
    ...loops.flatMap((loop) => ('circle' in loop ? [loop.circle as XY] : loop.map(xyOf))),
    ...runsOf(job).flatMap((run) => (run.part === file ? run.points.map(xyOf) : [])),
    ...(part.holes ?? []).map((hole): XY => hole.at),
  ];
  return nearest(
    sheet,
    place,
    snapPx,
    points.filter((point) => !but(point)).map((point) => [point, point] as const),
  );
}
