import { moveRegion } from '../geometry/plane/loop.ts';
import { apply, type Rigid } from '../geometry/plane/rigid.ts';
import type { Casting, Hole } from '../job/casting.ts';

/** A casting with everything that belongs to it carried by a motion of the plane; untouched by the identity. */
export function moveCasting(casting: Casting, motion: Rigid): Casting {
  if (isIdentity(motion)) return casting;
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

const isIdentity = ({ turnRad, shift }: Rigid): boolean => turnRad === 0 && shift.x === 0 && shift.y === 0;
