import { it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { verifyCheck } from '../../../src/clearance/verify.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { jointOf } from '../../support/joints.ts';
import { Random } from '../../support/random.ts';
import { randomJob } from '../../support/random-jobs.ts';

it('random', () => {
  let tc = 0,
    tv = 0;
  const states: Record<string, number> = {};
  for (let seed = Number(process.env.FROM ?? 0); seed < Number(process.env.TO ?? 50); seed++) {
    const joint = jointOf(randomJob(new Random(seed)));
    const t0 = performance.now();
    const { answer } = drain(checkJoint(joint));
    const t1 = performance.now();
    const found = drain(verifyCheck(joint, answer));
    const t2 = performance.now();
    tc += t1 - t0;
    tv += t2 - t1;
    const key = `${answer.home.state}/${answer.install?.state}/${answer.rotating.map((r) => r.state)}`;
    states[key] = (states[key] ?? 0) + 1;
    if (found.doubts.length > 0 || t2 - t1 > 2000 || t1 - t0 > 2000)
      console.log(seed, (t1 - t0).toFixed(0), (t2 - t1).toFixed(0), key, found.looks, found.doubts);
  }
  console.log(tc, tv, states);
}, 600000);
