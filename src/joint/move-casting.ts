import { moveRegion, type Region } from '../geometry/plane/loop.ts';
import { apply, type Rigid } from '../geometry/plane/rigid.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { Casting, Hole } from '../job/casting.ts';

const last = new WeakMap<Casting, { readonly motion: Rigid; readonly moved: Casting }>();

/**
 * A casting with everything that belongs to it carried by a motion of the plane; untouched by the identity. Carried the
 * same way again it is the same casting, so that what is known of its outlines still holds.
 */
export function moveCasting(casting: Casting, motion: Rigid): Casting {
  if (isIdentity(motion)) return casting;
  const before = last.get(casting);
  if (before !== undefined && isSame(before.motion, motion)) return before.moved;
  const moved = carried(casting, {
    point: (p) => apply(motion, p),
    region: (region) => moveRegion(region, motion),
  });
  last.set(casting, { motion, moved });
  return moved;
}

/** A map of the plane, of its points and of regions in it. */
export interface PlaneMap {
  readonly point: (p: Vec) => Vec;
  readonly region: (region: Region) => Region;
}

/** A casting with everything that belongs to it carried by a map of the plane. */
export function carried(casting: Casting, { point, region }: PlaneMap): Casting {
  const shape = <T extends { readonly loops: Region }>(one: T): T => ({ ...one, loops: region(one.loops) });
  const place = <T extends { readonly at: Vec }>(one: T): T => ({ ...one, at: point(one.at) });
  return {
    ...casting,
    sections: casting.sections.map(shape),
    holes: casting.holes.map(place),
    hollows: casting.hollows.map(shape),
    doNotCut: casting.doNotCut.map(shape),
    wallReadings: casting.wallReadings.map(place),
    traced: casting.traced && shape(casting.traced),
  };
}

export const moveHole = (hole: Hole, motion: Rigid): Hole =>
  isIdentity(motion) ? hole : { ...hole, at: apply(motion, hole.at) };

const isSame = (a: Rigid, b: Rigid): boolean =>
  a.turnRad === b.turnRad && a.shift.x === b.shift.x && a.shift.y === b.shift.y;

const isIdentity = ({ turnRad, shift }: Rigid): boolean => turnRad === 0 && shift.x === 0 && shift.y === 0;
