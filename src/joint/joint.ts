import type { Casting } from '../job/casting.ts';
import type { Fit } from '../job/job.ts';
import type { Bolt } from './bolts.ts';
import type { DowelUp } from './dowel-up.ts';
import type { Hand } from './hand.ts';
import type { JointNotice, Refusal } from './notices.ts';

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
  readonly dowelUp: DowelUp & { readonly hand: Hand };
  readonly bolts: readonly Bolt[];
  /** Half the worst dowel clearance, mm. */
  readonly dowelPlayMm: number;
  /** Root mean square of the dowel fit, mm; 0 where nothing was fitted. */
  readonly fitRmsMm: number;
  /** Why the drawings do not register, so that nothing is judged; stands among the notices too. */
  readonly refusal: Refusal | null;
  readonly notices: readonly JointNotice[];
}
