import type { CheckResult } from '../clearance/check-result.ts';

/** What the check finds of what a plan leaves. */
export type AfterCut = Pick<CheckResult, 'home' | 'wayIn' | 'wander'>;
