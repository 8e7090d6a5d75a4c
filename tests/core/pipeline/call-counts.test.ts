import { expect, it } from 'vitest';
import { openJob } from '../../../cli/open-job.ts';
import { writeReport } from '../../../cli/report.ts';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { make, sheetsToShow } from '../../../viewer/heavy/make.ts';
import { work } from '../../../viewer/heavy/work.ts';
import { callsWhile } from '../../support/call-counts.ts';
import { heard, runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage } from '../../support/view-server.ts';

const fit = 'profiles/starter-boss/starter.fit.json';

/** Plans that are handed out; what else would give is worked out by other means. */
const plansIn = (calls: (name: string) => number): number => calls('resultOf');

it('a plan is counted where it is made', async () => {
  const calls = await callsWhile(() => runCli('grind', fit));
  expect(plansIn(calls)).toBe(1);
  expect(calls('buildOutlineTree')).toBeGreaterThan(1);
});

it('a report plans once, and marks out once', async () => {
  const calls = await callsWhile(() => heard(() => writeReport(fit, `${folderWith()}/report.html`, smallPage)));
  expect(plansIn(calls)).toBe(1);
  expect(calls('tableOf')).toBe(1);
});

it('sheets and tables of a job as files plan once', async () => {
  const calls = await callsWhile(() => runCli('markout', fit, '-o', folderWith()));
  expect(plansIn(calls)).toBe(1);
});

it('opening "Mark out" and taking all files of it plans once', async () => {
  const job = openJob(fit).whole;
  const calls = await callsWhile(async () => {
    for (const reply of work(job, false)) void reply;
    const printing = { bars: trueBars, mirrored: false };
    drain(sheetsToShow(job, printing));
    for (const as of ['pdf', 'svg', 'dxf', 'csv', 'report', 'drawing'] as const) {
      await drain(make(job, { as, paper: 'a4', ...printing, date: '2026-03-01', page: '' }));
    }
  });
  expect(plansIn(calls)).toBe(1);
});

it('the clearance along the way in after the cut is worked out once, whatever is asked next', () => {
  const job = demoJob();
  const curves = [false, true].flatMap((alternatives) =>
    [...work(job, alternatives)].flatMap((reply) => ('kind' in reply && reply.kind === 'way-after' ? reply.curve : [])),
  );
  expect(curves.length).toBe(2);
  expect(curves[1]).toBe(curves[0]);
});

it('another clearance checks a job again without building the tree of any outline as it was read', async () => {
  const job = demoJob();
  const check = (asked: JobFile): void => {
    for (const reply of work(asked, false)) if ('kind' in reply && reply.kind === 'way') return;
  };
  check(job);
  const first = await callsWhile(() => check(demoJob()));
  const edited = await callsWhile(() => check({ ...job, fit: { ...job.fit, clearance: { home: 1.5, wayIn: 1.25 } } }));
  expect(first('buildOutlineTree')).toBeGreaterThan(10);
  expect(edited('checkJoint')).toBeGreaterThan(0);
  expect(edited('buildOutlineTree')).toBe(0);
  expect(edited('buildPolarFrame')).toBe(0);
});
