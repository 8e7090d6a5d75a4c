import { homeAnswer, installAnswer } from '../answers/check.ts';
import type { GrindAnswer, MovingCut } from '../answers/grind-answer.ts';
import { warningOf } from '../answers/warning.ts';
import type { Part } from '../clearance/passes.ts';
import { farReason, reasonOf, reasonsBeforehand } from '../clearance/reasons.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import { markingOut } from '../markout/marking-out.ts';
import { alternativesTo } from './alternatives/alternatives.ts';
import type { CutPlan } from './cut-plan.ts';
import { cutterWarnings } from './cutter/cutter-warnings.ts';
import { straightWarnings } from './cutter/straight-warnings.ts';
import { planBoth } from './plan-both.ts';
import { type Judged, judge, type PartPlan, planPart } from './plan-part.ts';
import { plansByPart } from './plans-by-part.ts';
import { refusedPlan } from './refused-plan.ts';

/** What a plan is to tell beyond itself. */
export interface PlanOptions {
  /** Whether to work out what else would give where it does not hold, which takes many plans. */
  readonly alternatives?: boolean;
}

/**
 * The least metal to take off one part, or both, so that a job keeps its asked clearances at home and on the way in, and
 * the check of what is left. Where nothing can be judged nothing is planned.
 */
export function* planCut(joint: Joint, options: PlanOptions = {}): Generator<Progress, CutPlan> {
  if (reasonOf(joint, reasonsBeforehand(joint)) !== null) return yield* refusedPlan(joint);
  const { alone, ...plan } =
    joint.fit.cut === 'both' ? yield* planOfBoth(joint) : yield* planOfOne(joint, joint.fit.cut);
  // parts that are too far apart to be judged are too far apart to be cut, so only a plan without a cut can be of such
  if (cutsNothing(plan.answer) && reasonOf(joint, farReason(joint, plan.afterCut)) !== null)
    return yield* refusedPlan(joint);
  yield { step: 'marking out', done: 0, of: 1 };
  const answer = withTables(joint, plan);
  if (answer.holds || options.alternatives !== true) return { ...plan, answer };
  return { ...plan, answer: { ...answer, alternatives: yield* alternativesTo(joint, alone) } };
}

const cutsNothing = ({ sections, movingCut }: GrindAnswer): boolean =>
  sections.length === 0 && (movingCut?.sections ?? []).length === 0;

/** The answer with the marking-out table of each part that is cut. */
function withTables(joint: Joint, plan: CutPlan): GrindAnswer {
  const [table = [], movingTable = []] = plansByPart(plan).map((one) => [...markingOut(joint, one)]);
  const { movingCut } = plan.answer;
  return { ...plan.answer, table, movingCut: movingCut && { ...movingCut, table: movingTable } };
}

/** A plan, and that of the part it cuts alone, for what else it may be asked for. */
interface Planned extends CutPlan {
  readonly alone: PartPlan | null;
}

function* planOfOne(joint: Joint, part: Part): Generator<Progress, Planned> {
  const plan = yield* planPart(joint, part);
  const judged = yield* judge(plan);
  const answer = answerOf(joint, [plan], judged);
  return { answer, afterCut: judged.check, part: plan.cutPart, judged: plan.after, alone: plan };
}

function* planOfBoth(joint: Joint): Generator<Progress, Planned> {
  const { fixed, moving } = yield* planBoth(joint);
  const judged = yield* judge(moving, [fixed]);
  const answer = answerOf(joint, [fixed, moving], judged);
  const parts = { part: fixed.cutPart, movingPart: moving.cutPart };
  return { answer, afterCut: judged.check, ...parts, judged: moving.after, alone: null };
}

function answerOf(
  { fit }: Joint,
  plans: readonly [PartPlan, PartPlan?],
  { check: after, uncured, holds }: Judged,
): GrindAnswer {
  const [{ part, cut }, moving] = plans;
  const movingCut: MovingCut | null = moving === undefined ? null : { ...moving.cut, table: [] };
  const { boundMm, volumeMm3, massG, sections, walls, thin, readings, unmeasured, cutter, straight, severed } = cut;
  const cuts = movingCut === null ? [cut] : [cut, movingCut];
  return {
    format: 'fettle-grind/1',
    title: fit.title,
    part,
    holds,
    reason: null,
    boundMm,
    volumeMm3,
    massG,
    sections,
    walls,
    thin,
    readings,
    unmeasured,
    cutter,
    straight,
    movingCut,
    smallestFilletMm: cutter?.radiusMm ?? null,
    severed,
    uncured: [...uncured],
    table: [],
    afterCut: { home: homeAnswer(after.home), install: after.wayIn && installAnswer(after.wayIn) },
    alternatives: holds ? [] : null,
    warnings: [
      ...plans.flatMap((plan) => plan?.warnings ?? []),
      ...cutterWarnings(cuts, fit.units),
      ...straightWarnings(cuts),
      ...after.notices.map((notice) => warningOf(notice, fit.units)),
    ],
  };
}
