import type { GrindAnswer } from '../answers/grind-answer.ts';
import type { CheckResult } from '../clearance/check-result.ts';
import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';

/** A cut plan, and the part as planned. */
export interface CutPlan {
  readonly answer: GrindAnswer;
  readonly afterCut: Pick<CheckResult, 'home' | 'wayIn'>;
  readonly part: Casting;
  /** The moving part as the plan leaves it, where both are cut. */
  readonly movingPart?: Casting;
  /** The joint as the plan is judged: as the cutter leaves it, with its fillets. */
  readonly judged: Joint;
}
