/**
 * Fettle's jobs: a fit and its parts, read, checked and dowelled up. Inside, lengths are in millimetres and angles in
 * radians, and names say so. What is wrong with an input is data: a `Reading` that is not `ok`, with its findings.
 * Nothing here opens a file; the texts come from a function that is handed in.
 *
 * @module fettle
 */
export type { Finding, Reading } from './files/finding.ts';
export type { Job } from './job/job.ts';
export { readAnyJob } from './job/read-any-job.ts';
export { type Load, type ReadJob, readJob } from './job/read-job.ts';
export type { Joint } from './joint/joint.ts';
export { placeJob } from './joint/place-job.ts';
