import type { Joint } from '../../src/joint/joint.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { type JobSpec, jobOf } from './jobs.ts';

/** A job dowelled up; see `jobOf`. */
export function jointOf(spec: JobSpec = {}): Joint {
  const placed = placeJob(jobOf(spec));
  if (!placed.ok) throw new Error(placed.findings.map(({ found }) => found).join('; '));
  return placed.value;
}
