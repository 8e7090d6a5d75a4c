import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { warningOf } from '../../../src/answers/warning.ts';
import { jobInFile, readJobFile } from '../../../src/job/read-job-file.ts';
import { placeJob } from '../../../src/joint/place-job.ts';
import { titled } from '../../support/titled.ts';

/** A case that any implementation could run: a job file, and what it is once dowelled up, in mm and radians, unrounded. */
interface Case {
  readonly title: string;
  readonly job: string;
  readonly source: string;
  readonly expected: object;
  /** All that it warns of. */
  readonly warnings?: readonly { readonly code: string; readonly at: readonly [number, number] }[];
  readonly near: readonly {
    readonly path: string;
    readonly value: number;
    readonly tolerance: number;
    readonly why: string;
  }[];
}

const here = new URL('.', import.meta.url).pathname;
const cases = JSON.parse(readFileSync(`${here}cases.json`, 'utf8')) as readonly Case[];

function jointOf(name: string) {
  const file = `${here}jobs/${name}.job.json`;
  const read = readJobFile(file, readFileSync(file, 'utf8'));
  const job = read.ok ? jobInFile(read.value, file) : read;
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}

const valueAt = (joint: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], joint);

describe('a job dowelled up', () => {
  test.each(titled(cases))('%s', (_, { job, expected, warnings, near }) => {
    const joint = jointOf(job);
    expect(joint).toMatchObject(expected);
    for (const { path, value, tolerance } of near)
      expect(Math.abs((valueAt(joint, path) as number) - value), path).toBeLessThan(tolerance);
    if (warnings === undefined) return;
    const warned = joint.notices.map((notice) => warningOf(notice, 'mm')).map(({ code, at }) => ({ code, at }));
    expect(warned).toEqual(warnings);
  });

  test('has a case for every job', () => {
    const named = readdirSync(`${here}jobs`).map((file) => file.replace('.job.json', ''));
    expect(named.filter((name) => !cases.some(({ job }) => job === name))).toEqual([]);
  });
});
