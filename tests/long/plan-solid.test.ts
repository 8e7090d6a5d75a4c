import { expect, it } from 'vitest';
import { GeosPlane } from '../support/oracles/geos-plane.ts';
import { judgedPlans } from '../support/random-plans.ts';

// the plans of seeds 0 to 149 are judged in plan-lines.test.ts, where they are made
const firstSeed = 150;
const jobs = 150;

/** So many of them must hold, lest nothing be shown. */
const holdAtLeast = 50;

it('a plan that holds touches nothing it must not, and what a cutter leaves keeps the asked clearance', async () => {
  const { wrong, held } = judgedPlans(await GeosPlane.start(), firstSeed, jobs);
  expect(wrong).toEqual({});
  expect(held).toBeGreaterThan(holdAtLeast);
});
