import { describe, expect, it } from 'vitest';
import { checkAnswer } from '../../../src/answers/check.ts';
import { checkJoint } from '../../../src/clearance/check.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { verifyPlan } from '../../../src/plan/verify/verify-plan.ts';
import { expectHolds, type JobCase, JobCases } from '../../support/job-cases.ts';
import { answerOf, planned } from '../../support/plan-answer.ts';
import { titled } from '../../support/titled.ts';

interface Case extends JobCase {
  readonly command: 'check' | 'grind';
  /** The code of a warning that must be among those given. */
  readonly warns?: string;
}

const jobs = new JobCases<Case>(new URL('.', import.meta.url));

describe('what is judged, planned and refused', () => {
  it.each(titled(jobs.cases))('%s', (_, one) => {
    const joint = jobs.jointOf(one.job);
    if (one.command === 'check') return expectHolds(checkAnswer(joint, drain(checkJoint(joint))), one);
    const { plan } = planned(joint);
    const answer = answerOf({ joint, plan });
    expectHolds(answer, one);
    if (one.warns !== undefined) expect(answer.warnings.map(({ code }) => code)).toContain(one.warns);
    if (plan.reason === null) expect(drain(verifyPlan(joint, plan)).doubts).toEqual([]);
  });

  it('has a case for every job', () => {
    expect(jobs.withoutCase()).toEqual([]);
  });
});
