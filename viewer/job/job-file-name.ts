import { jobEnding } from '../../src/files/file-endings.ts';
import type { JobFile } from '../../src/files/job-file.ts';

/** A name for a file of a job: the job itself, or what is made from it. */
export function jobFileName(job: JobFile, ending: string = jobEnding): string {
  const plain = (job.fit.title ?? '').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
  // a letter of two units may have been cut in half
  const short = plain
    .toLowerCase()
    .slice(0, 60)
    .replace(/[\uD800-\uDBFF]$|-$/, '');
  return `${short === '' ? 'job' : short}${ending}`;
}
