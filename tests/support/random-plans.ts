import type { GrindAnswer } from '../../src/answers/grind-answer.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { Complaint } from './oracles/complaint.ts';
import type { GeosPlane } from './oracles/geos-plane.ts';
import { judgePlan } from './oracles/judge-plan.ts';
import { answerTo } from './plan-answer.ts';
import { Random } from './random.ts';
import { randomPlanJob } from './random-plan-job.ts';
import { remembered } from './remembered.ts';

/** A job made at random with its plan, by its seed. */
export const randomPlan = remembered((seed: number): { readonly joint: Joint; readonly answer: GrindAnswer } => {
  const joint = randomPlanJob(new Random(seed));
  return { joint, answer: answerTo(joint) };
});

/** What there is to say against plans that hold, each judged as a solid, and how many of them hold. */
export function judgedPlans(geos: GeosPlane, firstSeed: number, count: number) {
  const wrong: Record<string, readonly Complaint[]> = {};
  let held = 0;
  for (let seed = firstSeed; seed < firstSeed + count; seed++) {
    const { joint, answer } = randomPlan(seed);
    if (!answer.holds) continue;
    held++;
    const complaints = judgePlan(geos, joint, answer);
    if (complaints.length > 0) wrong[`seed ${seed}`] = complaints;
    geos.free();
  }
  return { wrong, held };
}
