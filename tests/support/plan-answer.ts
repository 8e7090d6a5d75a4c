import { grindAnswer } from '../../src/answers/grind.ts';
import type { GrindAnswer } from '../../src/answers/grind-answer.ts';
import { type Markout, markoutOf } from '../../src/drawing/markout/markout-sheets.ts';
import { drain } from '../../src/geometry/progress.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { markingOut } from '../../src/markout/marking-out.ts';
import { type Bench, benchesOf } from '../../src/markout/marking-out-bench.ts';
import { alternativesTo } from '../../src/plan/alternatives/alternatives.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import type { PlanResult } from '../../src/plan/plan-result.ts';

/** A joint with its plan. */
export interface PlannedJoint {
  readonly joint: Joint;
  readonly plan: PlanResult;
}

export const planned = (joint: Joint): PlannedJoint => ({ joint, plan: drain(planCut(joint)) });

/** A plan as its JSON has it; what else would give is left out where it was not asked for. */
export function answerOf({ joint, plan }: PlannedJoint, withOthers = false): GrindAnswer {
  const isSettled = plan.holds || plan.reason !== null;
  const others = withOthers || isSettled ? drain(alternativesTo(joint, plan)) : null;
  return grindAnswer(joint, plan, markingOut(joint, plan), others);
}

export const answerTo = (joint: Joint, withOthers = false): GrindAnswer => answerOf(planned(joint), withOthers);

export const benchesFor = ({ joint, plan }: PlannedJoint, mirrored = false): Bench[] =>
  benchesOf(joint, plan, markingOut(joint, plan), mirrored);

export const markoutFor = (planned: PlannedJoint, mirrored = false): Markout =>
  markoutOf(benchesFor(planned, mirrored));
