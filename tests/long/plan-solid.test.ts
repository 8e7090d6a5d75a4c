import { expect, it } from 'vitest';
import type { Complaint } from '../support/oracles/complaint.ts';
import { GeosPlane } from '../support/oracles/geos-plane.ts';
import { judgePlan } from '../support/oracles/judge-plan.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomPlanJob } from '../support/random-plan-job.ts';

const jobs = 300;

/** So many of them must hold, lest nothing be shown. */
const holdAtLeast = 100;

it('a plan that holds touches nothing it must not, and what a cutter leaves keeps the asked clearance', {
  timeout: 2_400_000,
}, async () => {
  const geos = await GeosPlane.start();
  const wrong: Record<string, readonly Complaint[]> = {};
  let held = 0;
  for (let seed = 0; seed < jobs; seed++) {
    const joint = randomPlanJob(new Random(seed));
    const answer = answerTo(joint);
    if (!answer.holds) continue;
    held++;
    const complaints = judgePlan(geos, joint, answer);
    if (complaints.length > 0) wrong[`seed ${seed}`] = complaints;
    geos.free();
  }
  expect(wrong).toEqual({});
  expect(held).toBeGreaterThan(holdAtLeast);
});
