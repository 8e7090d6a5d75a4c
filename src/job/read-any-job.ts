import { jobEnding } from '../files/file-endings.ts';
import type { Reading } from '../files/finding.ts';
import { type Load, parsed, type ReadJob, readFit } from './read-job.ts';
import { readWholeJob } from './read-job-file.ts';

/** A fit with its parts beside it, or a job in one file (`*.job.json`), read and checked; or all that is wrong with it. */
export const readAnyJob = (file: string, load: Load): Reading<ReadJob> =>
  file.endsWith(jobEnding) ? readWholeJob(file, load) : readFit(file, parsed(load));
