import { pathBeside } from '../src/files/file-paths.ts';
import type { FitFile } from '../src/files/fit-file.ts';
import type { JobFile, PartDraft } from '../src/files/job-file.ts';
import { readJson } from '../src/files/read-json.ts';
import { jobEnding, readJobFile } from '../src/job/read-job-file.ts';
import { loadText } from './load-text.ts';
import { orFail } from './open-job.ts';

/** A fit and the parts it names as one job, or the job in a file; they have been read without a finding before. */
export function wholeJob(file: string): JobFile {
  if (file.endsWith(jobEnding)) return orFail(readJobFile(file, orFail(loadText(file))));
  const fit = jsonIn(file) as FitFile;
  const names = [...new Set([fit.fixed, fit.moving, ...(fit.rotating ?? [])])];
  const parts = names.map((name) => [name, jsonIn(pathBeside(file, name)) as PartDraft]);
  return { format: 'fettle-job/1', fit, parts: Object.fromEntries(parts) };
}

const jsonIn = (file: string): unknown => orFail(readJson(file, orFail(loadText(file))));
