import type { Reading } from '../src/files/finding.ts';
import type { JobFile } from '../src/files/job-file.ts';
import { readAnyJob } from '../src/job/read-any-job.ts';
import type { Joint } from '../src/joint/joint.ts';
import { placeJob } from '../src/joint/place-job.ts';
import { decoded, loadBytes } from './load-text.ts';
import { failWith } from './report-findings.ts';
import { timed } from './timing.ts';

/** A file as it was read; what is proved, kept and hashed are these bytes and no others. */
export interface ReadFile {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** A job as it was opened: dowelled up, whole, and the files it was read from, each once. */
export interface OpenedJob {
  readonly joint: Joint;
  readonly whole: JobFile;
  readonly files: readonly ReadFile[];
  readonly readMs: number;
  readonly dowelUpMs: number;
}

/** Reads a fit with all its parts and dowels it up; everything wrong with any of them is reported at once. */
export function openJob(fitFile: string, load = loadBytes): OpenedJob {
  const files = new Map<string, ReadFile>();
  const read = timed(() => orFail(readAnyJob(fitFile, (file) => loadKeeping(files, file, load))));
  const { job, whole } = read.value;
  const placed = timed(() => orFail(placeJob(job)));
  return { joint: placed.value, whole, files: [...files.values()], readMs: read.ms, dowelUpMs: placed.ms };
}

/** The text of a file, its bytes kept; a file named twice is read once. */
function loadKeeping(files: Map<string, ReadFile>, file: string, load: typeof loadBytes): Reading<string> {
  const known = files.get(file);
  const bytes: Reading<Uint8Array> = known === undefined ? load(file) : { ok: true, value: known.bytes };
  if (!bytes.ok) return bytes;
  files.set(file, { file, bytes: bytes.value });
  return decoded(file, bytes.value);
}

/** The value of a reading, or the end of the command. */
export function orFail<T>(reading: Reading<T>): T {
  return reading.ok ? reading.value : failWith(reading.findings);
}
