import { apply, inverse } from '../../geometry/plane/rigid.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Extrusion, Meeting } from './verify-extrusions.ts';
import { EdgeGrid } from './verify-grid.ts';
import type { Looks } from './verify-look.ts';
import { pathMm, placementAt } from './verify-way.ts';

/** What was found of the metal of one section that others go through. */
export interface FoulEstimate {
  /** The area lies between these, mm². */
  readonly leastAreaMm2: number;
  readonly mostAreaMm2: number;
  /** Null where nothing is left of the section. */
  readonly deepestMm: number | null;
  /** How far `deepestMm` may be off. */
  readonly withinMm: number;
}

/** A square of the plane. */
interface Cell {
  readonly centre: Vec;
  readonly halfMm: number;
}

/** A cell with the gap of its centre to the section, and to all that sweeps through it. */
interface ProbedCell extends Cell {
  readonly metalMm: number;
  readonly sweptMm: number;
}

/** Cells are quartered until no more than this share of the area is in doubt. */
const doubtfulShare = 0.04;

/** Reaching out a little farther than the corner of a cell allows for how far a point is carried between two looks. */
const reachOf = ({ halfMm }: Cell): number => 1.25 * Math.SQRT2 * halfMm;

/**
 * Measures the metal of a section that others sweep through while sharing depth with it, on a quadtree: gaps change no
 * faster than one goes, so a cell whose centre is deep enough in both is in the foul, and one far enough from either
 * is out of it.
 */
export function measureFoul(
  section: Extrusion,
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): FoulEstimate {
  const end = looks.made + mostLooks;
  const inside: Cell[] = [];
  let doubtful: ProbedCell[] = [];
  let cells: Cell[] = [cellRound(section)];
  for (;;) {
    const before = looks.made;
    doubtful = [];
    for (const cell of cells) {
      const probed = probe(section, meetings, cell, looks);
      const cornerMm = Math.SQRT2 * cell.halfMm;
      if (Math.max(probed.metalMm, probed.sweptMm) < -cornerMm) inside.push(cell);
      else if (probed.metalMm <= cornerMm && probed.sweptMm <= reachOf(cell)) doubtful.push(probed);
    }
    const share = areaOf(doubtful) / (areaOf(inside) + areaOf(doubtful));
    const spent = looks.made - before;
    // the next round looks at twice as many cells or more, each as dear as these
    if (doubtful.length === 0 || share < doubtfulShare || looks.made + 2 * spent > end) break;
    cells = doubtful.flatMap(quartersOf);
  }
  const leastAreaMm2 = areaOf(inside);
  const withinMm = 7 * (doubtful[0]?.halfMm ?? 0);
  const left = metalLeft(section, meetings, doubtful, withinMm / 2, looks);
  const deepestMm =
    left.length === 0
      ? null
      : Math.max(deepestOnCut(section, doubtful), farthest([...inside, ...doubtful], left, withinMm));
  return { leastAreaMm2, mostAreaMm2: leastAreaMm2 + areaOf(doubtful), deepestMm, withinMm };
}

const areaOf = (cells: readonly Cell[]): number => cells.reduce((sum, { halfMm }) => sum + 4 * halfMm ** 2, 0);

function cellRound({ shape }: Extrusion): Cell {
  const points = pointsOf(shape);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right] = [least(xs), -least(xs.map((x) => -x))];
  const [bottom, top] = [least(ys), -least(ys.map((y) => -y))];
  const halfMm = Math.max(right - left, top - bottom) / 2 + shape.spacingMm;
  return { centre: vec((left + right) / 2, (bottom + top) / 2), halfMm };
}

const pointsOf = (shape: Extrusion['shape']): Vec[] =>
  shape.stations.flatMap((runs, i) => runs.map((run) => shape.pointAt(run, i)).filter((p) => p !== null));

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);

function probe({ shape }: Extrusion, meetings: readonly Meeting[], cell: Cell, looks: Looks): ProbedCell {
  looks.made++;
  const reach = reachOf(cell);
  const metalMm = shape.gapMm(cell.centre, 2 * reach);
  return { ...cell, metalMm, sweptMm: metalMm > reach ? Infinity : sweptGap(meetings, cell.centre, reach, looks) };
}

/** The least gap between a point and what sweeps past, as long as it is within reach of it. */
function sweptGap(meetings: readonly Meeting[], p: Vec, reach: number, looks: Looks): number {
  let gap = Infinity;
  for (const meeting of meetings) {
    gap = Math.min(gap, passingGap(meeting, p, reach, looks));
    if (gap < -reach) break;
  }
  return gap;
}

function passingGap({ moving, way, stretch }: Meeting, p: Vec, reach: number, looks: Looks): number {
  const path = pathMm(way, p);
  let least = Infinity;
  for (let at = stretch.from; ; ) {
    looks.made++;
    const gap = moving.gapMm(apply(inverse(placementAt(way, at)), p), 2 * reach);
    least = Math.min(least, gap);
    if (gap < -reach || at >= stretch.to || path === 0) return least;
    // before it has run so far it cannot come within reach, nor sweep over the point, nor get deep enough
    const free = gap > reach ? gap - reach : gap > 0 ? gap : gap + reach;
    at = Math.min(stretch.to, at + Math.max(free, reach / 8) / path);
  }
}

function quartersOf({ centre: { x, y }, halfMm }: Cell): Cell[] {
  const half = halfMm / 2;
  return [vec(x - half, y - half), vec(x + half, y - half), vec(x + half, y + half), vec(x - half, y + half)].map(
    (centre) => ({ centre, halfMm: half }),
  );
}

/**
 * Whether the centre of a doubtful cell stands for metal that stays, beside the edge of the sweep: or a little
 * within it, since the row of cells just outside may be clear of the edge and so not in doubt.
 */
const isBesideCut = ({ metalMm, sweptMm, halfMm }: ProbedCell): boolean => metalMm < 0 && sweptMm > -halfMm / 2;

/** What a probe knows of the metal is only known near its edge: here the whole way out counts. */
const deepestOnCut = ({ shape }: Extrusion, doubtful: readonly ProbedCell[]): number =>
  -least([0, ...doubtful.filter(isBesideCut).map(({ centre }) => shape.gapMm(centre, Infinity))]);

/** Points of the metal left: along the cut, and along the outline where nothing sweeps over it. */
function metalLeft(
  section: Extrusion,
  meetings: readonly Meeting[],
  doubtful: readonly ProbedCell[],
  reach: number,
  looks: Looks,
): Vec[] {
  const unswept = pointsOf(section.shape).filter((p) => sweptGap(meetings, p, reach, looks) > 0);
  return [...doubtful.filter(isBesideCut).map(({ centre }) => centre), ...unswept];
}

/** The greatest distance from a point of some cells to the nearest of some points. */
function farthest(cells: readonly Cell[], points: readonly Vec[], withinMm: number): number {
  const grid = new EdgeGrid(points.map((p) => ({ kind: 'line', a: p, b: p })));
  let most = 0;
  const open = [...cells];
  for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
    const mm = grid.distance(cell.centre, Infinity);
    most = Math.max(most, mm);
    if (mm + Math.SQRT2 * cell.halfMm > most + withinMm) open.push(...quartersOf(cell));
  }
  return most;
}
