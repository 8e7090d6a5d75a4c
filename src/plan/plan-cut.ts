import { checkJoint } from '../clearance/check.ts';
import type { CheckResult } from '../clearance/check-result.ts';
import { farReason, reasonOf, reasonsBeforehand } from '../clearance/reasons.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { cutterNotices } from './cutter/cutter-notices.ts';
import { type Judgement, judge } from './judge-plan.ts';
import type { PlanNotice } from './notices.ts';
import type { PartCut } from './part-cut.ts';
import { planBoth } from './plan-both.ts';
import { type PartPlan, planPart } from './plan-part.ts';
import type { PlanResult } from './plan-result.ts';
import { refusedPlan } from './refused-plan.ts';

/**
 * The least metal to take off one part, or both, so that a job keeps its asked clearances at home and on the way in, and
 * the check of what is left. Where nothing can be judged nothing is planned: then `check`, of the joint as it is, says why.
 * `known` is the plan of one part alone, where it is there already.
 */
export function* planCut(
  joint: Joint,
  check: () => Generator<Progress, CheckResult> = () => checkJoint(joint),
  known: PartPlan | null = null,
): Generator<Progress, PlanResult> {
  if (reasonOf(joint, reasonsBeforehand(joint)) !== null) return refusedPlan(joint, yield* check());
  const plan = joint.fit.cut === 'both' ? yield* planOfBoth(joint, known) : yield* planOfOne(joint, joint.fit.cut);
  // parts that are too far apart to be judged are too far apart to be cut, so only a plan without a cut can be of such
  const cutsNothing = plan.cuts.every(({ sections }) => sections.length === 0);
  if (cutsNothing && reasonOf(joint, farReason(joint, plan.afterCut)) !== null)
    return refusedPlan(joint, yield* check());
  return plan;
}

function* planOfOne(joint: Joint, part: Part): Generator<Progress, PlanResult> {
  const plan = yield* planPart(joint, part);
  return { ...resultOf([plan], yield* judge(plan, joint.fit.clearance)), judged: plan.judged, alone: plan };
}

function* planOfBoth(joint: Joint, known: PartPlan | null): Generator<Progress, PlanResult> {
  const { fixed, moving } = yield* planBoth(joint, known);
  const judged = yield* judge(moving, joint.fit.clearance, [fixed]);
  return { ...resultOf([fixed, moving], judged), judged: moving.judged, alone: null };
}

function resultOf(plans: readonly PartPlan[], judged: Judgement): Omit<PlanResult, 'judged' | 'alone'> {
  const cuts = plans.map(({ cut }) => cut);
  return {
    reason: null,
    ...judged,
    cuts,
    notices: [
      ...plans.flatMap(({ notices }) => notices),
      ...cuts.flatMap(({ cutter }) => (cutter === null ? [] : cutterNotices(cutter))),
      ...cuts.flatMap(straightNotices),
      ...judged.notices,
    ],
  };
}

/** Where the edge of a cut is left as it was, though a straight one was asked for. */
const straightNotices = ({ straight }: PartCut): PlanNotice[] =>
  (straight?.asItWas ?? []).map(({ section, why, at }) => ({ code: 'edge-not-straight', section, why, at }));
