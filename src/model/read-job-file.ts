import type { Reading } from './finding.ts';
import { firstFindings } from './first-findings.ts';
import type { Job } from './job.ts';
import { type JobFile, jobFile } from './job-file.ts';
import { readJob } from './read-job.ts';
import { readJson } from './read-json.ts';
import { schemaFindings } from './schema-findings.ts';

/** The ending of a job in one file. */
export const jobEnding = '.job.json';

/** A job file's text as the job it holds, or everything its schema finds wrong with it. */
export function readJobFile(file: string, text: string): Reading<JobFile> {
  const json = readJson(file, text);
  if (!json.ok) return json;
  const findings = schemaFindings(file, jobFile, json.value);
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  // the schema neither changes nor adds anything, so what has no findings is a job as it stands
  return { ok: true, value: json.value as JobFile };
}

/** The name the fit of a job goes by where a finding tells of it. */
const fitInJob = 'the fit';

/** The fit of a job file and the parts it names, read and checked as files of their own would be. */
export function jobInFile({ fit, parts }: JobFile): Reading<Job> {
  return readJob(fitInJob, (path) => {
    const held = path === fitInJob ? fit : Object.hasOwn(parts, path) ? parts[path] : undefined;
    if (held !== undefined) return { ok: true, value: JSON.stringify(held) };
    return { ok: false, findings: [{ file: path, at: '', found: 'not in the job', expected: 'a part the job holds' }] };
  });
}
