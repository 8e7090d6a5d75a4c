import type { Casting } from '../model/casting.ts';
import type { GrindAnswer } from '../model/grind-answer.ts';

/** A cut plan, and the part as it leaves it. */
export interface CutPlan {
  readonly answer: GrindAnswer;
  readonly part: Casting;
  /** The moving part as the plan leaves it, where both are cut. */
  readonly movingPart?: Casting;
}
