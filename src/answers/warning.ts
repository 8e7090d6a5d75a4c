import { roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Units } from '../job/lengths.ts';
import type { PlanNotice } from '../plan/notices.ts';
import { planNoticeText } from '../words/plan-notices.ts';
import type { Warning } from './check-answer.ts';

/** A notice as an answer gives it: its code, its text, and where it has one its place, rounded to 1e-6 mm. */
export function warningOf(notice: PlanNotice, units: Units): Warning {
  const said = { code: notice.code, text: planNoticeText(notice, units) };
  return 'at' in notice ? { ...said, at: roundPoint6(notice.at) } : said;
}
