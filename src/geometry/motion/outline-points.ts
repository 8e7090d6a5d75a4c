import { add, scale, type Vec, vec } from '../plane/vec.ts';
import { regionContains } from './containment.ts';
import {
  centreX,
  centreY,
  endX,
  endY,
  type OutlineTree,
  radiusOf,
  startX,
  startY,
  sweepRadOf,
} from './outline-tree.ts';

/** A point of an outline, and the edge of its tree that it lies on. */
export interface OutlinePoint {
  readonly edge: number;
  readonly point: Vec;
}

/** Points of every edge of an outline, its start among them, no farther apart than `apartMm` along it. */
export function* outlinePoints(tree: OutlineTree, apartMm: number): Generator<OutlinePoint> {
  for (let edge = 0; edge < tree.edgeCount; edge++) {
    const radius = radiusOf(tree, edge);
    const [ax, ay] = [startX(tree, edge), startY(tree, edge)];
    const [bx, by] = [endX(tree, edge), endY(tree, edge)];
    const longMm = radius > 0 ? radius * Math.abs(sweepRadOf(tree, edge)) : Math.hypot(bx - ax, by - ay);
    const count = Math.max(1, Math.ceil(longMm / apartMm));
    for (let k = 0; k < count; k++) {
      const t = k / count;
      yield { edge, point: radius > 0 ? onArc(tree, edge, t) : vec(ax + t * (bx - ax), ay + t * (by - ay)) };
    }
  }
}

function onArc(tree: OutlineTree, edge: number, t: number): Vec {
  const [cx, cy] = [centreX(tree, edge), centreY(tree, edge)];
  const fromRad = Math.atan2(startY(tree, edge) - cy, startX(tree, edge) - cx);
  const atRad = fromRad + t * sweepRadOf(tree, edge);
  const radius = radiusOf(tree, edge);
  return vec(cx + radius * Math.cos(atRad), cy + radius * Math.sin(atRad));
}

/** Short beside any reading, long beside rounding, mm. */
const probeMm = 1e-4;

/** The unit vector square to an edge of an outline at a point of it, away from the metal. */
export function outwardNormal(tree: OutlineTree, edge: number, at: Vec): Vec {
  const radius = radiusOf(tree, edge);
  const across =
    radius > 0
      ? vec(at.x - centreX(tree, edge), at.y - centreY(tree, edge))
      : vec(endY(tree, edge) - startY(tree, edge), startX(tree, edge) - endX(tree, edge));
  const unit = scale(across, 1 / Math.hypot(across.x, across.y));
  const probe = add(at, scale(unit, probeMm));
  return regionContains(tree, probe.x, probe.y) ? scale(unit, -1) : unit;
}
