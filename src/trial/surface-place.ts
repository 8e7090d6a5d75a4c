import { treeOf } from '../clearance/trees.ts';
import { nearestOnOutline } from '../geometry/motion/nearest-point.ts';
import { outwardNormal } from '../geometry/motion/outline-points.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { Section } from '../job/casting.ts';
import type { Offered, SurfacePlace } from './contact.ts';

/** A place as it was written down: on a section of the fixed part, at a depth from its face. */
export interface WrittenPlace {
  readonly section: string;
  readonly at: Vec;
  readonly depthMm: number;
}

/** The section, or the layer that a cut left of it, that reaches a depth; null where none does. */
export const sectionAt = ({ joint }: Offered, { section, depthMm }: WrittenPlace): Section | null =>
  joint.fixed.sections.find(
    ({ id, depth, depthErrorMm }) =>
      id === section &&
      (depth === null || (depth.fromMm - depthErrorMm <= depthMm && depthMm <= depth.toMm + depthErrorMm)),
  ) ?? null;

/** A written place brought onto the outline it is of; null where there is no metal of it at that depth. */
export function surfacePlaceOf(
  offered: Offered,
  written: WrittenPlace,
): (SurfacePlace & { readonly offMm: number }) | null {
  const section = sectionAt(offered, written);
  if (section === null) return null;
  const tree = treeOf(section.loops);
  const { distanceMm, point, edge } = nearestOnOutline(tree, written.at);
  if (edge < 0) return null;
  return {
    section: written.section,
    depthMm: written.depthMm,
    at: point,
    normal: outwardNormal(tree, edge, point),
    offMm: distanceMm,
  };
}
