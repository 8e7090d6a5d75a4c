import { describe, expect, test } from 'vitest';
import { warningOf } from '../../../src/answers/warning.ts';
import { expectHolds, type JobCase, JobCases } from '../../support/job-cases.ts';
import { titled } from '../../support/titled.ts';

/** What a job is once dowelled up, in mm and radians, unrounded. */
interface Case extends JobCase {
  /** All that it warns of. */
  readonly warnings?: readonly { readonly code: string; readonly at: readonly [number, number] }[];
}

const jobs = new JobCases<Case>(new URL('.', import.meta.url));

describe('a job dowelled up', () => {
  test.each(titled(jobs.cases))('%s', (_, one) => {
    const joint = jobs.jointOf(one.job);
    expectHolds(joint, one);
    if (one.warnings === undefined) return;
    const warned = joint.notices.map((notice) => warningOf(notice, 'mm')).map(({ code, at }) => ({ code, at }));
    expect(warned).toEqual(one.warnings);
  });

  test('has a case for every job', () => {
    expect(jobs.withoutCase()).toEqual([]);
  });
});
