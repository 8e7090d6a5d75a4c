import { regionContains } from '../geometry/motion/containment.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { sweptRegion } from '../geometry/motion/swept-region.ts';
import { type Box, boxAround, boxAroundEdges, boxesMeet } from '../geometry/plane/edge-box.ts';
import { identity } from '../geometry/plane/rigid.ts';
import { add, distance, dot, length, lerp, scale, sub, type Vec, vec } from '../geometry/plane/vec.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { DepthRange } from '../job/casting.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import type { Bench, BenchBand, BenchPlace } from './marking-out-bench.ts';
import { parted, type ReliefEdges, type Run, reliefEdges } from './marking-out-edges.ts';
import { farthestApart } from './marking-out-hull.ts';
import { metalWithin } from './marking-out-plate.ts';

/** A piece of ply that fits the outline to leave, slid into the cut from outside. */
export interface ProfilePiece {
  readonly outline: Polygons;
  /** The edges that lie on the outline to leave. */
  readonly gauging: readonly Run[];
  /** Edges of the cut that no straight push from outside reaches. */
  readonly missed: readonly Run[];
  /** The way back out, a unit vector. */
  readonly outward: Vec;
  /** The metal beside the cut, the lines of the band there, and the places of the table. */
  readonly around: Polygons;
  readonly firstLine: readonly Run[];
  readonly lastLine: readonly Run[];
  readonly places: readonly BenchPlace[];
  /** Where pins hold it under or over the plate; null where there is no room for them. */
  readonly pins: readonly [Vec, Vec] | null;
}

/** How far a gauge reaches past the cut, mm: the first that leaves room for its pins. */
const reachesMm = [35, 60, 90] as const;
/** Beyond the cut a gauge stands clear of the casting by this, mm, so that it rests on the cut alone … */
const clearMm = 1.5;
/** … but not so near to it as this. */
const besideMm = 3;
/** From the middle of a Ø6 pin to an edge of the ply, and to metal it has to pass, mm. */
export const pinRoomMm = 7;
const leastPinSpacingMm = 15;
/** Cuts nearer to one another than this are gauged by one piece, mm, if they face the same way. */
const togetherMm = 60;
const sameWay = 0.7;
/** A curve of the ply that no finished surface rests on may be off by this, mm. */
const roughMm = 0.02;
/** How far behind the cut a gauge may reach, mm. */
const behindMm = 6;
/** Edges this near are the same, mm. */
const onEdgeMm = 5e-3;
/** How much of the casting is shown round a cut, mm. */
const shownMm = 9;

/** The pieces of the gauge for a band; none for metal that goes without leaving an edge. */
export function profilePieces(bench: Bench, band: BenchBand): ProfilePiece[] {
  const metal = metalWithin(bench.after, band.depth);
  const passed = metalWithin(bench.after, betweenPlateAnd(band.depth));
  return placesOfWork(band).flatMap((work) => {
    let piece: ProfileBody | null = null;
    for (const reachMm of reachesMm) {
      piece = pieceFor(work, metal, passed, reachMm);
      if (piece?.pins) break;
    }
    return piece === null ? [] : { ...piece, ...shownAround(work, metal, band) };
  });
}

type ProfileBackdrop = Pick<ProfilePiece, 'around' | 'firstLine' | 'lastLine' | 'places'>;
type ProfileBody = Omit<ProfilePiece, keyof ProfileBackdrop>;

function shownAround({ relief }: Work, metal: Polygons, { firstEdges, lastEdges, places }: BenchBand): ProfileBackdrop {
  const shown = grown(relief, shownMm);
  const tree = buildOutlineTree(loopsOf(shown));
  const isShown = ({ x, y }: Vec): boolean => regionContains(tree, x, y);
  const shownOf = ({ cuts }: ReliefEdges): Run[] => cuts.filter(({ points }) => points.every(isShown));
  return {
    around: intersection(metal, shown),
    firstLine: shownOf(firstEdges),
    lastLine: shownOf(lastEdges),
    places: places.filter(({ at }) => isShown(at)),
  };
}

/** The depths from the plate on the face to the far side of a band: a pin passes them all. */
const betweenPlateAnd = (depth: DepthRange | null): DepthRange | null =>
  depth && { fromMm: Math.min(0, depth.fromMm), toMm: Math.max(0, depth.toMm) };

interface Work {
  readonly relief: Polygons;
  readonly cuts: readonly Run[];
  readonly outward: Vec;
  readonly box: Box;
}

function placesOfWork({ lines, present }: BenchBand): Work[] {
  const works: Work[] = [];
  for (const relief of pieces(lines.planned)) {
    const work = workOf(relief, reliefEdges(loopsOf(relief), present));
    if (work === null) continue;
    const near = works.findIndex(
      (other) => boxesMeet(other.box, work.box, togetherMm) && dot(other.outward, work.outward) > sameWay,
    );
    if (near < 0) works.push(work);
    else works[near] = both(works[near] as Work, work);
  }
  return works;
}

function workOf(relief: Polygons, { cuts, outsides }: ReliefEdges): Work | null {
  // with metal on the left of an outline, the sum of its outward normals is its chord turned right
  const chords = outsides.map(({ points }) => sub(points.at(-1) as Vec, points[0] as Vec));
  const normal = chords.reduce((sum, { x, y }) => add(sum, vec(y, -x)), vec(0, 0));
  if (cuts.length === 0 || length(normal) < onEdgeMm) return null;
  const box = boxAroundEdges(outlinesOf(relief).flat());
  return { relief, cuts, outward: scale(normal, 1 / length(normal)), box };
}

function both(a: Work, b: Work): Work {
  const outward = add(a.outward, b.outward);
  return {
    relief: [...a.relief, ...b.relief],
    cuts: [...a.cuts, ...b.cuts],
    outward: scale(outward, 1 / length(outward)),
    box: boxAround([a.box, b.box]),
  };
}

function pieceFor(work: Work, metal: Polygons, passed: Polygons, reachMm: number): ProfileBody | null {
  const { relief, cuts, outward } = work;
  const window = intersection(grown(relief, reachMm), outsideOf(work, 2 * (reachMm + diagonal(work.box))));
  const clear = grown(difference(metal, grown(relief, besideMm)), clearMm);
  const far = scale(outward, -2 * (reachMm + diagonal(work.box)));
  const inTheWay = sweptRegion(loopsOf(union([...metal, ...clear])), identity, { kind: 'slide', by: far }, toleranceMm);
  const bodies = pieces(difference(window, inTheWay.polygons));
  const gauged = bodies.map((body) => ({ body, gauging: sharedWith(body, cuts, true) }));
  const best = gauged.toSorted((a, b) => runLength(b.gauging) - runLength(a.gauging))[0];
  if (best === undefined || best.gauging.length === 0) return null;
  return {
    outline: best.body,
    gauging: best.gauging,
    missed: sharedWith(best.body, cuts, false),
    outward,
    pins: pinsIn(best.body, passed),
  };
}

/** All that lies outward of the cut, and a little behind it. */
function outsideOf({ cuts, outward }: Work, farMm: number): Polygons {
  const along = vec(-outward.y, outward.x);
  const points = cuts.flatMap((cut) => cut.points);
  const [middle] = points as [Vec, ...Vec[]];
  const innermost = Math.min(...points.map((p) => dot(sub(p, middle), outward))) - behindMm;
  const at = (out: number, aside: number): Vec => add(add(middle, scale(outward, out)), scale(along, aside));
  return [[at(innermost, farMm), at(innermost, -farMm), at(farMm, -farMm), at(farMm, farMm)]];
}

const grown = (polygons: Polygons, byMm: number): Polygons =>
  offset(outlinesOf(polygons), byMm, roughMm, 'outside').polygons;

const diagonal = ({ minX, minY, maxX, maxY }: Box): number => Math.hypot(maxX - minX, maxY - minY);

/** The parts of some lines that lie on the edge of a piece, or those that don't. */
function sharedWith(body: Polygons, lines: readonly Run[], wanted: boolean): Run[] {
  const tree = buildOutlineTree(loopsOf(body));
  const isOn = (a: Vec, b: Vec): boolean => nearestOnOutline(tree, lerp(a, b, 0.5)).distanceMm < onEdgeMm;
  return lines
    .flatMap(({ points }) => parted(points, isOn))
    .filter(({ points, holds }) => holds === wanted && pathLength(points) > 10 * onEdgeMm)
    .map(({ points }) => ({ points, closed: false }));
}

const runLength = (runs: readonly Run[]): number => runs.reduce((sum, { points }) => sum + pathLength(points), 0);

const pathLength = (points: readonly Vec[]): number =>
  points.slice(1).reduce((sum, p, i) => sum + distance(points[i] as Vec, p), 0);

function pinsIn(body: Polygons, passed: Polygons): readonly [Vec, Vec] | null {
  const inside = offset(outlinesOf(body), -pinRoomMm, roughMm, 'inside').polygons;
  const free = difference(inside, grown(passed, pinRoomMm));
  const pins = farthestApart(free.flat());
  return pins === null || distance(...pins) < leastPinSpacingMm ? null : pins;
}
