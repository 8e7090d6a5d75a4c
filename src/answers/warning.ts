import type { CheckNotice } from '../clearance/notices.ts';
import { roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Units } from '../job/lengths.ts';
import { noticeText } from '../words/notices.ts';
import type { Warning } from './check-answer.ts';

/** A notice as an answer gives it: its code, its text, and where it has one its place, rounded to 1e-6 mm. */
export function warningOf(notice: CheckNotice, units: Units): Warning {
  const said = { code: notice.code, text: noticeText(notice, units) };
  return 'at' in notice ? { ...said, at: roundPoint6(notice.at) } : said;
}
