import { expect, test } from 'vitest';
import { traceNotices } from '../../../src/joint/trace-notices.ts';
import { noticeText } from '../../../src/words/notices.ts';
import { castingOf } from '../../support/jobs.ts';

test('a part says once which of its sections have only an assumed trace error', () => {
  const casting = castingOf({
    name: 'block',
    sections: [
      { id: 'ribs', traceErrorStated: false, traceErrorMm: 1 },
      { id: 'flange' },
      { id: 'boss', traceErrorStated: false, traceErrorMm: 1 },
    ],
  });
  const notices = traceNotices(casting);
  expect(notices.map(({ code }) => code)).toEqual(['trace-error-assumed']);
  expect(notices.map((notice) => noticeText(notice, 'mm'))).toEqual([
    'block: no trace error is stated for ribs, boss; ± 1 mm is assumed. State traceError, or gotBy, to have the true figure.',
  ]);
});

test('a part whose trace errors are all stated says nothing', () => {
  expect(traceNotices(castingOf({ sections: [{ id: 'ribs' }] }))).toEqual([]);
});
