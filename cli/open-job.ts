import type { Reading } from '../src/files/finding.ts';
import type { Job } from '../src/job/job.ts';
import { readJob } from '../src/job/read-job.ts';
import { jobEnding, jobInFile, readJobFile } from '../src/job/read-job-file.ts';
import type { Joint } from '../src/joint/joint.ts';
import { placeJob } from '../src/joint/place-job.ts';
import { loadText } from './load-text.ts';
import { failWith } from './report-findings.ts';
import { timed } from './timing.ts';

/** Reads a fit with all its parts and dowels it up; everything wrong with any of them is reported at once. */
export const openJob = (fitFile: string): Joint => openJobTimed(fitFile).joint;

/** As `openJob`, with what reading and dowelling up took. */
export function openJobTimed(fitFile: string): { joint: Joint; readMs: number; dowelUpMs: number } {
  const read = timed(() => orFail(readAny(fitFile)));
  const placed = timed(() => orFail(placeJob(read.value)));
  return { joint: placed.value, readMs: read.ms, dowelUpMs: placed.ms };
}

/** A fit with its parts beside it, or a job in one file. */
function readAny(file: string): Reading<Job> {
  if (!file.endsWith(jobEnding)) return readJob(file, loadText);
  const text = loadText(file);
  const held = text.ok ? readJobFile(file, text.value) : text;
  return held.ok ? jobInFile(held.value, file) : held;
}

/** The value of a reading, or the end of the command. */
export function orFail<T>(reading: Reading<T>): T {
  return reading.ok ? reading.value : failWith(reading.findings);
}
