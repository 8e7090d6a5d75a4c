import { expect, it } from 'vitest';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { make } from '../../../viewer/heavy/make.ts';
import { waysTold } from '../../../viewer/heavy/ways-told.ts';
import { smallJob } from '../../support/small-job.ts';

const asked = { fromRad: 0, toRad: Math.PI / 6 };
const reportOf = async (job: JobFile): Promise<string> => {
  const making = { as: 'report', paper: 'a4', bars: trueBars, mirrored: false, date: '2026-03-01', page: '' } as const;
  const reply = await drain(make(job, making));
  return reply.kind === 'made' ? String(reply.file?.data) : '';
};

it('a report made on the page has every way in and its map once that was asked of the job as it is, and not before', async () => {
  const job = smallJob;
  expect(await reportOf(job)).not.toContain('id="every-way"');
  const told = drain(waysTold(job, asked, null));
  const report = await reportOf(job);
  expect(report).toContain('id="every-way"');
  expect(told?.line).toMatch(/^(NO|A) WAY WITHOUT CUTTING/);
  expect(report).toMatch(/(NO|A) WAY WITHOUT CUTTING/);
  // another job: nothing was asked of it
  expect(await reportOf({ ...job, fit: { ...job.fit, clearance: 3 } })).not.toContain('id="every-way"');
});
