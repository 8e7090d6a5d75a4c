import { expect, test } from 'vitest';
import { traceWarnings } from '../../../src/joint/trace-warnings.ts';
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
  expect(traceWarnings(casting, 'mm')).toEqual([
    {
      code: 'trace-error-assumed',
      text: 'block: no trace error is stated for ribs, boss; ± 1 mm is assumed. State traceError, or gotBy, to have the true figure.',
    },
  ]);
});

test('a part whose trace errors are all stated says nothing', () => {
  expect(traceWarnings(castingOf({ sections: [{ id: 'ribs' }] }), 'mm')).toEqual([]);
});
