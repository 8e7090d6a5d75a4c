import type { Joint } from '../src/joint/joint.ts';
import { placeJob } from '../src/joint/place-job.ts';
import type { Reading } from '../src/model/finding.ts';
import { readJob } from '../src/model/read-job.ts';
import { loadText } from './load-text.ts';
import { failWith } from './report-findings.ts';

/** Reads a fit with all its parts and dowels it up; everything wrong with any of them is reported at once. */
export const openJob = (fitFile: string): Joint => orFail(placeJob(orFail(readJob(fitFile, loadText))));

/** The value of a reading, or the end of the command. */
export function orFail<T>(reading: Reading<T>): T {
  return reading.ok ? reading.value : failWith(reading.findings);
}
