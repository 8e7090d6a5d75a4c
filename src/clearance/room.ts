import { isMotionless, type Motion, still } from '../geometry/motion/motion.ts';
import { sweptRegion } from '../geometry/motion/swept-region.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { identity, type Rigid, rigid } from '../geometry/plane/rigid.ts';
import { thinLoop } from '../geometry/plane/thin-loop.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf } from '../geometry/polygons/polygons.ts';
import type { Section } from '../job/casting.ts';
import type { Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { drawnRoomMm } from './tolerances.ts';

/** Everything the moving sections cover from the first position to home, whatever their depth; for drawing, mm. */
export function roomItSwingsThrough(joint: Joint): Region {
  const ways = waysThrough(joint.fit.legs);
  const swept = joint.moving.sections.flatMap(({ loops }) => {
    const drawn = loops.map((loop) => thinLoop(loop, drawnRoomMm));
    return ways.map(({ start, motion }) => sweptRegion(drawn, start, motion, drawnRoomMm).polygons);
  });
  return loopsOf(union(swept.flat()));
}

/** The legs on which something moves in the plane: where it stands before and after them they cover too. */
function waysThrough(legs: readonly Leg[]): { start: Rigid; motion: Motion }[] {
  const ways = legs.map(({ from, motion }) => ({ start: rigid(from.turnRad, from.shift), motion }));
  const moving = ways.filter(({ motion }) => !isMotionless(motion));
  return moving.length > 0 ? moving : [{ start: identity, motion: still }];
}

/** Whether a section stands proud of its own mating face, into the other part's side. */
export const reachesPastFace = ({ depth }: Pick<Section, 'depth'>): boolean => depth === null || depth.fromMm < 0;

/** The room that matters on a drawing: of the sections that can meet the fixed part on the way in. */
export function roomToDraw(joint: Joint): Region {
  const { fit, fixed, moving } = joint;
  if (fit.legs.length === 0) return [];
  const sections = fixed.sections.some(reachesPastFace) ? moving.sections : moving.sections.filter(reachesPastFace);
  return sections.length === 0 ? [] : roomItSwingsThrough({ ...joint, moving: { ...moving, sections } });
}
