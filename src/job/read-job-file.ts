import { pathBeside } from '../files/file-paths.ts';
import type { Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import { type JobFile, jobFile } from '../files/job-file.ts';
import { readJson } from '../files/read-json.ts';
import { schemaFindings } from '../files/schema-findings.ts';
import type { Job } from './job.ts';
import { type Load, type ReadJob, readFit } from './read-job.ts';

/** A job file's text as the job it holds, or everything its schema finds wrong with it. */
export function readJobFile(file: string, text: string): Reading<JobFile> {
  const json = readJson(file, text);
  if (!json.ok) return json;
  const findings = schemaFindings(file, jobFile, json.value);
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  // the schema neither changes nor adds anything, so what has no findings is a job as it stands
  return { ok: true, value: json.value as JobFile };
}

/** A job file read and checked, and the job as it stands in it. */
export function readWholeJob(file: string, load: Load): Reading<ReadJob> {
  const text = load(file);
  const whole = text.ok ? readJobFile(file, text.value) : text;
  if (!whole.ok) return whole;
  const job = jobInFile(whole.value, file);
  return job.ok ? { ok: true, value: { job: job.value, whole: whole.value } } : job;
}

/** The fit in a job file and the parts it names, read and checked as files of their own beside that file would be. */
export function jobInFile({ fit, parts }: JobFile, file: string): Reading<Job> {
  const beside = new Map<string, unknown>(Object.entries(parts).map(([name, part]) => [pathBeside(file, name), part]));
  const read = readFit(file, (path) => {
    const held = path === file ? fit : beside.get(path);
    if (held !== undefined) return { ok: true, value: held };
    return { ok: false, findings: [{ file: path, at: '', found: 'not in the job', expected: 'a part the job holds' }] };
  });
  return read.ok ? { ok: true, value: read.value.job } : read;
}
