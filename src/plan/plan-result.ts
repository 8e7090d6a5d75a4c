import type { ReasonCode } from '../clearance/notices.ts';
import type { Joint } from '../joint/joint.ts';
import type { AfterCut } from './after-cut.ts';
import type { Hindrance } from './hindrances.ts';
import type { PlanNotice } from './notices.ts';
import type { CutFigures, PartCut } from './part-cut.ts';
import type { PartPlan } from './plan-part.ts';
import type { UncuredFoul } from './uncured-foul.ts';

/** What is said of a plan: its figures, without outlines. */
export interface PlanFigures {
  /** Why nothing is planned; null where something is, or nothing need be. */
  readonly reason: ReasonCode | null;
  readonly holds: boolean;
  /** One, or two where both parts are cut: the fixed one, then the moving one. A refused plan has the part it would cut, with nothing cut. */
  readonly cuts: readonly CutFigures[];
  readonly uncured: readonly UncuredFoul[];
  readonly afterCut: AfterCut;
  /** What stands against it; something always does where it does not hold. */
  readonly hindrances: readonly Hindrance[];
  /** Those of the check after it among them, with why nothing is planned. */
  readonly notices: readonly PlanNotice[];
}

/** The least metal to take off one part, or both; mm, joint frame. */
export interface PlanResult extends PlanFigures {
  readonly cuts: readonly PartCut[];
  /** The joint as judged: with the fillets that the cutter leaves. */
  readonly judged: Joint;
  /** The working of a plan of one part, for what else it may be asked for; null where both are cut, or nothing is planned. */
  readonly alone: PartPlan | null;
}
