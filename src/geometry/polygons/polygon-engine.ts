import {
  Clipper64,
  ClipType,
  FillRule,
  type Path64,
  type Paths64,
  PathType,
  type PolyPath64,
  PolyTree64,
} from 'clipper2-ts';
import type { Vec } from '../plane/vec.ts';
import type { Polygon, Polygons } from './polygons.ts';
import { boxRound, solidNear } from './solid-near.ts';

/**
 * The one adapter of the polygon engine. It works on a grid of 1e-6 mm, the same to which answers are rounded, so that
 * rounding a result for an answer cannot change its shape; whole numbers of the grid are exact beyond ±1e5 mm.
 */
const perMm = 1e6;

/** How far one operation may move an outline: the snap of its input, of its crossings, and its slivers; mm. */
export const engineErrorMm = 5e-6;

/** Everything that lies in one polygon or another. */
export const union = (polygons: Polygons): Polygons => operate(ClipType.Union, polygons, []);

/** What lies in both. */
export const intersection = (a: Polygons, b: Polygons): Polygons =>
  operate(ClipType.Intersection, near(a, b), near(b, a));

/** What lies in `a` and not in `b`. */
export const difference = (a: Polygons, b: Polygons): Polygons => operate(ClipType.Difference, a, near(b, a));

/** Of a solid what can matter to another, with room for the grid. */
const near = (polygons: Polygons, other: Polygons): Polygons =>
  solidNear(polygons, boxRound(other, 1000 * engineErrorMm));

/** The separate pieces of a solid, each its outline followed by its holes. */
export function pieces(polygons: Polygons): readonly Polygons[] {
  const tree = new PolyTree64();
  const engine = new Clipper64();
  engine.preserveCollinear = false;
  engine.addPaths(toGrid(polygons), PathType.Subject);
  engine.execute(ClipType.Union, FillRule.Positive, tree);
  return outlinesOf(tree).map((node) => fromGrid([node, ...childrenOf(node)].map((n) => n.polygon ?? [])));
}

/** Outlines of a tree of nested polygons, at every level: the root's children, and the children of holes. */
function outlinesOf(node: PolyPath64): PolyPath64[] {
  return childrenOf(node).flatMap((outline) => [outline, ...childrenOf(outline).flatMap(outlinesOf)]);
}

const childrenOf = (node: PolyPath64): PolyPath64[] => Array.from({ length: node.count }, (_, i) => node.child(i));

function operate(kind: ClipType, subject: Polygons, clip: Polygons): Polygons {
  const engine = new Clipper64();
  engine.preserveCollinear = false;
  engine.addPaths(toGrid(subject), PathType.Subject);
  engine.addPaths(toGrid(clip), PathType.Clip);
  const result: Paths64 = [];
  engine.execute(kind, FillRule.Positive, result);
  return fromGrid(result);
}

const toGrid = (polygons: Polygons): Paths64 => polygons.filter((polygon) => polygon.length > 2).map(gridPath);

const gridPath = (polygon: Polygon): Path64 =>
  polygon.map((p) => ({ x: Math.round(p.x * perMm), y: Math.round(p.y * perMm) }));

const fromGrid = (paths: Paths64): Polygons => paths.filter((path) => path.length > 2).map(polygonOf);

// + 0, so that no −0 reaches an answer
const polygonOf = (path: Path64): Polygon => path.map((p): Vec => ({ x: p.x / perMm + 0, y: p.y / perMm + 0 }));
