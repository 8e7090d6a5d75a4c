import { arcSpans, type Edge } from '../plane/edge.ts';
import { circleLoop, edgesOf, type Loop, type Region } from '../plane/loop.ts';
import { angleOf, distance, sub, type Vec } from '../plane/vec.ts';
import { regionContains } from './containment.ts';
import { nearestOnOutline } from './nearest-point.ts';
import { buildOutlineTree } from './outline-tree.ts';

/** A closed range of radius about a pole, mm. */
export interface RadialRange {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * The radii at which a full turn about `pole` meets the solid, least first, no two meeting. Between the radii that
 * outlines reach, and within the least of them, a whole circle is either metal or not.
 */
export function radialRanges(region: Region, pole: Vec): RadialRange[] {
  const tree = buildOutlineTree(region);
  const metalAt = (radius: number): boolean => regionContains(tree, pole.x + radius, pole.y);
  const reached = region.map((loop) => reachOf(loop, pole)).sort((a, b) => a.fromMm - b.fromMm);
  const ranges: RadialRange[] = metalAt(0) ? [{ fromMm: 0, toMm: 0 }] : [];
  for (const next of reached) {
    const last = ranges.at(-1);
    if (last !== undefined && (next.fromMm <= last.toMm || metalAt((last.toMm + next.fromMm) / 2))) {
      ranges[ranges.length - 1] = { fromMm: last.fromMm, toMm: Math.max(last.toMm, next.toMm) };
    } else {
      ranges.push(next);
    }
  }
  return ranges;
}

/** The rings a solid covers in a full turn or more, exact. */
export const ringsSwept = (region: Region, pole: Vec): Region =>
  radialRanges(region, pole).flatMap(({ fromMm, toMm }) =>
    [toMm, fromMm].filter((radius) => radius > 0).map((radius) => circleLoop(pole, radius)),
  );

function reachOf(loop: Loop, pole: Vec): RadialRange {
  const fromMm = nearestOnOutline(buildOutlineTree([loop]), pole).distanceMm;
  return { fromMm, toMm: edgesOf(loop).reduce((most, edge) => Math.max(most, farthestMm(edge, pole)), fromMm) };
}

function farthestMm(edge: Edge, pole: Vec): number {
  const ends = Math.max(distance(edge.a, pole), distance(edge.b, pole));
  if (edge.kind === 'line') return ends;
  const away = sub(edge.centre, pole);
  return arcSpans(edge, angleOf(away)) ? Math.max(ends, distance(edge.centre, pole) + edge.radius) : ends;
}
