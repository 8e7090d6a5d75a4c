import { readFileSync } from 'node:fs';
import { checkJoint } from '../../src/clearance/check.ts';
import { roomToDraw } from '../../src/clearance/room.ts';
import type { DrawInput } from '../../src/drawing/fit/draw-input.ts';
import type { Reading } from '../../src/files/finding.ts';
import { drain } from '../../src/geometry/progress.ts';
import { readJob } from '../../src/job/read-job.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import { remembered } from './remembered.ts';

/** The demos of `profiles`, by the name their pictures go by. */
export const demos = {
  'transfer-case': 'marsh-carrier/transfer-case',
  starter: 'starter-boss/starter',
  adapter: 'sae-3-adapter/adapter',
} as const;

const load = (path: string): Reading<string> => ({ ok: true, value: readFileSync(path, 'utf8') });

/** A demo read, dowelled up, checked and planned, ready to be drawn. */
export const demoToDraw = (demo: keyof typeof demos): DrawInput => profileToDraw(demos[demo]);

/** The same of any fit in `profiles`, without its ending. */
export const profileToDraw = remembered((fit: string): DrawInput => {
  const folder = new URL('../../profiles/', import.meta.url).pathname;
  const job = readJob(`${folder}${fit}.fit.json`, load);
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  const check = drain(checkJoint(joint.value));
  const plan = drain(planCut(joint.value));
  return { joint: joint.value, check, plan, alternatives: [], room: roomToDraw(joint.value) };
});
