import type { JobFile } from '../../src/model/job-file.ts';
import { jobEnding } from '../../src/model/read-job-file.ts';

/** A name for the file of a job. */
export function jobFileName(job: JobFile): string {
  const plain = (job.fit.title ?? '').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
  return `${plain === '' ? 'job' : plain.toLowerCase().slice(0, 60)}${jobEnding}`;
}
