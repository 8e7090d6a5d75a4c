import { still } from '../geometry/motion/motion.ts';
import { sweptRegion } from '../geometry/motion/swept-region.ts';
import type { Region } from '../geometry/plane/loop.ts';
import { identity, rigid } from '../geometry/plane/rigid.ts';
import { union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf } from '../geometry/polygons/polygons.ts';
import type { Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import { drawnRoomMm } from './tolerances.ts';

/** Everything the moving sections cover from the first position to home, whatever their depth; for drawing, mm. */
export function roomItSwingsThrough(joint: Joint): Region {
  const ways = [
    { start: identity, motion: still },
    ...joint.fit.legs.map(({ from, motion }) => ({ start: rigid(from.turnRad, from.shift), motion })),
  ];
  const swept = joint.moving.sections.flatMap(({ loops }) =>
    ways.map(({ start, motion }) => sweptRegion(loops, start, motion, drawnRoomMm).polygons),
  );
  return loopsOf(union(swept.flat()));
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
