import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import type { NextReading } from './measure-next.ts';
import type { Explanation } from './solve.ts';
import type { Trial } from './trial.ts';

/** Metal of a next cut that lies past the last line of the plan before it, by section of the part that is cut. */
export interface PastLast {
  readonly part: Part;
  readonly section: string;
  readonly areaMm2: number;
}

/** The cut that is still to be made, by what the trial fits have shown. */
export interface NextCut {
  /** As it is cut by now, and as the readings have it. */
  readonly joint: Joint;
  readonly plan: PlanResult;
  readonly tables: readonly MarkingTable[];
  readonly pastLast: readonly PastLast[];
}

/** What the trial fits of a job teach. */
export interface TrialResult {
  readonly trial: Trial;
  readonly explanation: Explanation;
  /** Null where the readings settle nothing, or something has to be measured again. */
  readonly next: NextCut | null;
  /** Null where all is known well. */
  readonly measureNext: NextReading | null;
}
