import type { Casting, Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { MarkingRow } from '../markout/marking-row.ts';
import { uncut } from './contact.ts';
import { surfacePlaceOf, type WrittenPlace } from './surface-place.ts';

/** The middles of the depths of a fixed section beside which moving metal stands at home, mm. */
export function depthsBeside({ depth }: Pick<Section, 'depth'>, { sections }: Pick<Casting, 'sections'>): number[] {
  if (depth === null) return [0];
  const middles = sections.flatMap((moving) => {
    if (moving.depth === null) return [(depth.fromMm + depth.toMm) / 2];
    const fromMm = Math.max(depth.fromMm, -moving.depth.toMm);
    const toMm = Math.min(depth.toMm, -moving.depth.fromMm);
    return fromMm < toMm ? [(fromMm + toMm) / 2] : [];
  });
  return [...new Set(middles)];
}

/** A place of the marking-out table as it is found on the fixed part before the cut; null where nothing stands beside it. */
export function benchPlace(joint: Joint, { section, depth, at }: MarkingRow): WrittenPlace | null {
  const [depthMm] = depthsBeside({ depth }, joint.moving);
  if (depthMm === undefined) return null;
  const place = surfacePlaceOf(uncut(joint), { section, at, depthMm });
  return place && { section, at: place.at, depthMm };
}
