import type { BoltAnswer, DowelUpAnswer, Warning } from '../answers/check-answer.ts';
import type { Casting } from '../job/casting.ts';
import type { Fit } from '../job/job.ts';

/**
 * A job dowelled up: every casting carried into the joint frame (mm; origin on the crank axis, seen looking at
 * the fixed part's mating face), the moving part at home.
 */
export interface Joint {
  /** As read, but with its paired holes in the joint frame at home; `axis` stays a point of the fixed drawing. */
  readonly fit: Fit;
  readonly fixed: Casting;
  readonly moving: Casting;
  /** Drawn about their own axis, so only converted to mm. */
  readonly rotating: readonly Casting[];
  readonly dowelUp: DowelUpAnswer;
  readonly bolts: readonly BoltAnswer[];
  /** Half the worst dowel clearance, mm. */
  readonly dowelPlayMm: number;
  /** Root mean square of the dowel fit, mm; 0 where nothing was fitted. */
  readonly fitRmsMm: number;
  /** Why the drawings do not register, so that nothing is judged; stands among the warnings too. */
  readonly refusal: Warning | null;
  readonly warnings: readonly Warning[];
}
