import type { CheckAnswer } from '../answers/check-answer.ts';

/** What the check says of what a plan leaves. */
export interface AfterCut {
  readonly home: HomeResult;
  /** Null where only home is asked. */
  readonly wayIn: WayInResult | null;
}

type HomeResult = CheckAnswer['home'];
type WayInResult = NonNullable<CheckAnswer['install']>;
