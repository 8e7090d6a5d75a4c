import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../../src/answers/check.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { jobInFile, readJobFile } from '../../../src/job/read-job-file.ts';
import { placeJob } from '../../../src/joint/place-job.ts';
import { verifyPlan } from '../../../src/plan/verify/verify-plan.ts';
import { answerOf, planned } from '../../support/plan-answer.ts';
import { titled } from '../../support/titled.ts';

/** A case that any implementation could run: a job file, what its answer must hold, and figures with their tolerance. */
interface Case {
  readonly title: string;
  readonly job: string;
  readonly command: 'check' | 'grind';
  readonly source: string;
  readonly expected: object;
  /** The code of a warning that must be among those given. */
  readonly warns?: string;
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

const valueAt = (answer: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], answer);

describe('what is judged, planned and refused', () => {
  it.each(titled(cases))('%s', (_, { job, command, expected, warns, near }) => {
    const joint = jointOf(job);
    if (command === 'check') {
      const answer = checkAnswer(joint, drain(checkJoint(joint)));
      expect(answer).toMatchObject(expected);
      for (const { path, value, tolerance } of near)
        expect(Math.abs((valueAt(answer, path) as number) - value), path).toBeLessThanOrEqual(tolerance);
      return;
    }
    const { plan } = planned(joint);
    const answer = answerOf({ joint, plan });
    expect(answer).toMatchObject(expected);
    if (warns !== undefined) expect(answer.warnings.map(({ code }) => code)).toContain(warns);
    for (const { path, value, tolerance } of near)
      expect(Math.abs((valueAt(answer, path) as number) - value), path).toBeLessThanOrEqual(tolerance);
    if (plan.reason === null) expect(drain(verifyPlan(joint, plan)).doubts).toEqual([]);
  });

  it('has a case for every job', () => {
    const named = readdirSync(`${here}jobs`).map((file) => file.replace('.job.json', ''));
    expect(named.filter((name) => !cases.some(({ job }) => job === name))).toEqual([]);
  });
});
