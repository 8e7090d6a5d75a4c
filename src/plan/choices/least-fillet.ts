import { treeOf } from '../../clearance/trees.ts';
import { nearestOnOutline } from '../../geometry/motion/nearest-point.ts';
import { type ArcEdge, type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { edgesOfRegion } from '../../geometry/plane/loop.ts';
import type { Joint } from '../../joint/joint.ts';
import type { PartCut } from '../part-cut.ts';

/** Nearer to it than this an edge of a cut is the outline as cast, mm. */
const asCastMm = 0.01;
/** Shorter arcs are told too loosely by the lines to have a radius, mm. */
const shortestMm = 0.1;

/**
 * The least radius (mm) of the inward corners that cuts leave in the plane, as they are planned for a cutter of some
 * radius, which leaves none tighter; null where the new edges have none.
 */
export function leastFilletMm(joint: Joint, cuts: readonly PartCut[], radiusMm: number): number | null {
  const radii = cuts.flatMap(({ part, sections }) =>
    sections.flatMap(({ id, bands }) => {
      const outline = treeOf(joint[part].sections.find((section) => section.id === id)?.loops ?? []);
      const isNew = (arc: ArcEdge): boolean => nearestOnOutline(outline, pointOnEdge(arc, 0.5)).distanceMm > asCastMm;
      return bands.flatMap(({ lines }) => edgesOfRegion(lines.planned).filter(isInward).filter(isNew));
    }),
  );
  // an arc of the lines may be a little tighter than the polygons that were proved
  return radii.length === 0 ? null : Math.max(radiusMm, Math.min(...radii.map(({ radius }) => radius)));
}

/** An arc that bulges into the metal that stays: what comes off lies on its left. */
const isInward = (edge: Edge): edge is ArcEdge =>
  edge.kind === 'arc' && edge.sweepRad > 0 && edge.sweepRad * edge.radius > shortestMm;
