import type { Reading } from '../src/files/finding.ts';
import { readAnyJob } from '../src/job/read-any-job.ts';
import type { Joint } from '../src/joint/joint.ts';
import { placeJob } from '../src/joint/place-job.ts';
import { loadText } from './load-text.ts';
import { failWith } from './report-findings.ts';
import { timed } from './timing.ts';

/** Reads a fit with all its parts and dowels it up; everything wrong with any of them is reported at once. */
export const openJob = (fitFile: string): Joint => openJobTimed(fitFile).joint;

/** As `openJob`, with what reading and dowelling up took. */
export function openJobTimed(fitFile: string): { joint: Joint; readMs: number; dowelUpMs: number } {
  const read = timed(() => orFail(readAnyJob(fitFile, loadText)));
  const placed = timed(() => orFail(placeJob(read.value)));
  return { joint: placed.value, readMs: read.ms, dowelUpMs: placed.ms };
}

/** The value of a reading, or the end of the command. */
export function orFail<T>(reading: Reading<T>): T {
  return reading.ok ? reading.value : failWith(reading.findings);
}
