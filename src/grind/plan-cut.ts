import type { Part } from '../clearance/passes.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Joint } from '../joint/joint.ts';
import type { GrindAnswer, MovingCut } from '../model/grind-answer.ts';
import { alternativesTo } from './alternatives.ts';
import type { CutPlan } from './cut-plan.ts';
import { cutterWarnings } from './cutter-warnings.ts';
import { markingOut } from './marking-out.ts';
import { planBoth } from './plan-both.ts';
import { type Judged, judge, type PartPlan, planPart } from './plan-part.ts';
import { plansByPart } from './plans-by-part.ts';
import { straightWarnings } from './straight-warnings.ts';

/** What a plan is to tell beyond itself. */
export interface PlanOptions {
  /** Whether to work out what else would give where it does not hold, which takes many plans. */
  readonly alternatives?: boolean;
}

/**
 * The least metal to take off one part, or both, so that a job keeps its asked clearances at home and on the way in, and
 * the check of what is left.
 */
export function* planCut(joint: Joint, options: PlanOptions = {}): Generator<Progress, CutPlan> {
  const { alone, ...plan } =
    joint.fit.cut === 'both' ? yield* planOfBoth(joint) : yield* planOfOne(joint, joint.fit.cut);
  yield { step: 'marking out', done: 0, of: 1 };
  const answer = withTables(joint, plan);
  if (answer.holds || options.alternatives !== true) return { ...plan, answer };
  return { ...plan, answer: { ...answer, alternatives: yield* alternativesTo(joint, alone) } };
}

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
  return { answer: answerOf(joint, plan, judged, null), part: plan.cutPart, judged: plan.after, alone: plan };
}

function* planOfBoth(joint: Joint): Generator<Progress, Planned> {
  const { fixed, moving } = yield* planBoth(joint);
  const judged = yield* judge(moving, [fixed]);
  const answer = answerOf(joint, fixed, judged, { ...moving.cut, table: [] });
  return { answer, part: fixed.cutPart, movingPart: moving.cutPart, judged: moving.after, alone: null };
}

function answerOf(
  { fit }: Joint,
  { part, cut }: PartPlan,
  { check: { answer: after }, uncured, holds }: Judged,
  movingCut: MovingCut | null,
): GrindAnswer {
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
    afterCut: { home: after.home, install: after.install },
    alternatives: holds ? [] : null,
    warnings: [...cutterWarnings(cuts, fit.units), ...straightWarnings(cuts), ...after.warnings],
  };
}
