import { jobEnding } from '../files/file-endings.ts';
import type { Reading } from '../files/finding.ts';
import { type Load, parsed, type ReadJob, readFit } from './read-job.ts';
import { readWholeJob } from './read-job-file.ts';

/**
 * A fit with its parts beside it, or a job in one file (`.job.json`), read and checked; or all that is wrong with it. Beside the
 * job, in mm and radians, stands all of it as it does in its files, in their units and degrees: a job file to be written.
 * `load` is as for {@link readJob}, and nothing but what it throws is thrown.
 *
 * @example A fit and its two parts, put into one file.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { readAnyJob } from 'fettle';
 *
 * const fit = 'profiles/sae-3-adapter/adapter.fit.json';
 * const read = readAnyJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * if (!read.ok) throw new Error(JSON.stringify(read.findings));
 * const again = readAnyJob('adapter.job.json', () => ({ ok: true, value: JSON.stringify(read.value.whole) }));
 * console.log(again.ok, Object.keys(read.value.whole.parts).join(' ')); // true flywheel-housing.part.json adapter.part.json
 * ```
 */
export const readAnyJob = (file: string, load: Load): Reading<ReadJob> =>
  file.endsWith(jobEnding) ? readWholeJob(file, load) : readFit(file, parsed(load));
