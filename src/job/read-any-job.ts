import type { Reading } from '../files/finding.ts';
import type { Job } from './job.ts';
import { type Load, readJob } from './read-job.ts';
import { jobEnding, jobInFile, readJobFile } from './read-job-file.ts';

/** A fit with its parts beside it, or a job in one file (`*.job.json`), read and checked; or all that is wrong with it. */
export function readAnyJob(file: string, load: Load): Reading<Job> {
  if (!file.endsWith(jobEnding)) return readJob(file, load);
  const text = load(file);
  const held = text.ok ? readJobFile(file, text.value) : text;
  return held.ok ? jobInFile(held.value, file) : held;
}
