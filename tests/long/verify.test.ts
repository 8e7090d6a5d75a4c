import { expect, it } from 'vitest';
import { checkJoint } from '../../src/clearance/check.ts';
import { verifyCheck } from '../../src/clearance/verify/verify.ts';
import { drain } from '../../src/geometry/progress.ts';
import { jointOf } from '../support/joints.ts';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-jobs.ts';

it('measuring again finds nothing against the answers of 150 random jobs', () => {
  const doubted = Array.from({ length: 150 }, (_, seed) => seed + 100).flatMap((seed) => {
    const joint = jointOf(randomJob(new Random(seed)));
    const { doubts } = drain(verifyCheck(joint, drain(checkJoint(joint))));
    return doubts.map(({ where, text }) => `seed ${seed}, ${where}: ${text}`);
  });
  expect(doubted).toEqual([]);
});
