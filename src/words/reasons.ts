import type { ReasonCode } from '../clearance/notices.ts';
import type { Joint } from '../joint/joint.ts';
import type { PlanNotice } from '../plan/notices.ts';
import { planNoticeText } from './plan-notices.ts';

/** Why nothing is judged, in one line after the verdict; a check's or a plan's `reason`. */
export function reasonText(reason: ReasonCode): string {
  switch (reason) {
    case 'hand-mirrored':
      return 'the drawings do not register: one of the two is seen from the other side';
    case 'bolts-do-not-register':
      return 'the drawings do not register: paired bolts miss their holes by far';
    case 'dowels-do-not-register':
      return 'the drawings do not register: the dowels are not as far apart in one as in the other';
    case 'sizes-differ':
      return 'the two parts are not drawn to one scale, as it seems';
    case 'never-shares-depth':
      return 'nothing was measured, since no two sections ever share depth';
    case 'home-shares-nothing':
      return 'nothing was measured at home, since no two sections share depth there';
    case 'starts-in-shared-depth':
      return 'the way in sets out where sections already share depth, and how they came there is not known';
    case 'never-near':
      return 'the two parts never come near one another';
  }
}

interface Outcome {
  readonly reason: ReasonCode | null;
  readonly notices: readonly PlanNotice[];
}

/** What lies behind the reason and what to do about it; empty where the result stands by itself. */
export const reasonTexts = ({ fit }: Joint, { reason, notices }: Outcome): string[] =>
  notices.filter(({ code }) => code === reason).map((notice) => planNoticeText(notice, fit.units));

/** What is said besides the reason. */
export const otherNotices = ({ fit }: Joint, { reason, notices }: Outcome): string[] =>
  notices.filter(({ code }) => code !== reason).map((notice) => planNoticeText(notice, fit.units));

/** A reason that may be what is meant: the fit can say so. */
const mayBeMeant = (reason: ReasonCode): boolean =>
  !['hand-mirrored', 'bolts-do-not-register', 'dowels-do-not-register'].includes(reason);

/** What to do where nothing is judged. */
export const reasonSteps = (reason: ReasonCode): string[] => [
  'Put right what is named above, then check again.',
  ...(mayBeMeant(reason) ? ['If it is meant so, say "nothingShares": true in the fit.'] : []),
];
