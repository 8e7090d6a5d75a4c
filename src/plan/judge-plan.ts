import { checkJoint } from '../clearance/check.ts';
import type { CheckNotice } from '../clearance/notices.ts';
import { judgedByFigures } from '../clearance/reasons.ts';
import type { Progress } from '../geometry/progress.ts';
import type { Clearances } from '../job/job.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import type { AfterCut } from './after-cut.ts';
import { type Hindrance, hindrancesOf } from './hindrances.ts';
import type { PartCut } from './part-cut.ts';
import { type PartPlan, planInPlane, withFillets } from './plan-part.ts';
import { type UncuredFoul, uncuredBy } from './uncured-foul.ts';

/** What the check after a cut says of it. */
export interface Judgement {
  readonly holds: boolean;
  readonly uncured: readonly UncuredFoul[];
  readonly afterCut: AfterCut;
  /** Empty where it holds. */
  readonly hindrances: readonly Hindrance[];
  readonly notices: readonly CheckNotice[];
}

/**
 * Whether a plan holds: clearances kept by what is left, nothing in the way, all walls kept and nothing parted off. Where
 * it does not, what stands against it, held against the clearances `asked` of the job.
 */
export function* judge(
  plan: PartPlan,
  asked: Clearances,
  others: readonly PartPlan[] = [],
): Generator<Progress, Judgement> {
  const check = yield* checkJoint(judgedByFigures(plan.judged));
  const uncured = uncuredBy(plan.needs, check.rotating, plan.judged.fit.clearance.rotatingMm);
  const { home, wayIn, wander } = check;
  const afterCut = { home, wayIn, wander };
  const cuts = [...others, plan].map(({ cut }) => cut);
  const holds = check.meetsClearance && uncured.length === 0 && cuts.every(stands);
  const hindrances = holds ? [] : hindrancesOf({ cuts, uncured, afterCut }, asked);
  return { holds, uncured, afterCut, hindrances, notices: check.notices };
}

/** Whether what a cut leaves of a part will do. */
const stands = ({ severed, sections, walls, thin, readings }: Omit<PartCut, 'cutter'>): boolean =>
  severed.length === 0 &&
  sections.every(({ nothingLeft }) => !nothingLeft) &&
  [...walls, ...thin, ...readings].every(({ holds }) => holds !== false);

/** The plan of one part with its judgement where it holds; null as soon as it is known that it does not. */
export function* planThatHolds(
  joint: Joint,
  part: Part,
  asked: Clearances,
): Generator<Progress, { readonly plan: PartPlan; readonly judged: Judgement } | null> {
  const planned = yield* planInPlane(joint, part);
  if (!stands(planned.cut)) return null;
  const plan = yield* withFillets(joint, part, planned);
  const judged = yield* judge(plan, asked);
  return judged.holds ? { plan, judged } : null;
}
