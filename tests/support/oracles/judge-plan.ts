import type { GrindAnswer } from '../../../src/answers/grind-answer.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { type Complaint, worstOf } from './complaint.ts';
import { CutterBody } from './cutter-body.ts';
import type { GeosPlane } from './geos-plane.ts';
import { forbiddenCuts } from './judge-forbidden.ts';
import { type CutPart, roomComplaints } from './judge-room.ts';
import { thinComplaints } from './judge-thin.ts';
import { type Cuts, layersOf } from './layered-solid.ts';

/**
 * What a plan does that it must not, whatever it says of itself: metal it takes that it may not take, walls it leaves too
 * thin, and clearance that is not there once a real cutter has cut it. Judged as a solid, layer by layer, by GEOS alone.
 */
export function judgePlan(geos: GeosPlane, joint: Joint, answer: GrindAnswer): Complaint[] {
  const own: Record<'fixed' | 'moving', Cuts> = { fixed: [], moving: answer.movingCut?.sections ?? [] };
  own[answer.part] = answer.sections;
  const parts = (['fixed', 'moving'] as const).map((part): CutPart => {
    const layers = layersOf(geos, joint[part], own[part]);
    const { cutter } = joint.fit;
    const body = own[part].length > 0 && cutter !== null ? new CutterBody(geos, layers, cutter) : null;
    return { part, casting: joint[part], layers, body, isCut: own[part].length > 0 };
  });
  const [fixed, moving] = parts as [CutPart, CutPart];
  return worstOf([
    ...parts.flatMap((part) => (part.isCut ? forbiddenCuts(geos, part, joint.fit) : [])),
    ...parts.flatMap((part) => (part.isCut ? thinComplaints(geos, part, joint.fit) : [])),
    ...roomComplaints(geos, joint, fixed, moving),
  ]);
}
