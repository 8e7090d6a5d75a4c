import { moveRegion } from '../geometry/plane/loop.ts';
import { apply, type Rigid } from '../geometry/plane/rigid.ts';
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
  const moved = carried(casting, motion);
  last.set(casting, { motion, moved });
  return moved;
}

function carried(casting: Casting, motion: Rigid): Casting {
  const moved = <T extends Pick<Casting['hollows'][number], 'loops'>>(shape: T): T => ({
    ...shape,
    loops: moveRegion(shape.loops, motion),
  });
  return {
    ...casting,
    sections: casting.sections.map(moved),
    holes: casting.holes.map((hole) => moveHole(hole, motion)),
    hollows: casting.hollows.map(moved),
    doNotCut: casting.doNotCut.map(moved),
    wallReadings: casting.wallReadings.map((reading) => ({ ...reading, at: apply(motion, reading.at) })),
    traced: casting.traced && moved(casting.traced),
  };
}

export const moveHole = (hole: Hole, motion: Rigid): Hole =>
  isIdentity(motion) ? hole : { ...hole, at: apply(motion, hole.at) };

const isSame = (a: Rigid, b: Rigid): boolean =>
  a.turnRad === b.turnRad && a.shift.x === b.shift.x && a.shift.y === b.shift.y;

const isIdentity = ({ turnRad, shift }: Rigid): boolean => turnRad === 0 && shift.x === 0 && shift.y === 0;
