import type { Casting } from '../job/casting.ts';
import type { JointNotice } from './notices.ts';

/** One notice for a part whose trace error is only assumed on some of its sections. */
export function traceNotices({ name, sections }: Casting): JointNotice[] {
  const assumed = sections.filter((section) => !section.traceErrorStated);
  const [first] = assumed;
  if (first === undefined) return [];
  const ids = assumed.map((section) => section.id);
  return [{ code: 'trace-error-assumed', part: name, sections: ids, traceErrorMm: first.traceErrorMm }];
}
