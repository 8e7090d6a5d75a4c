/**
 * Fettle's jobs: a fit and its parts, read and checked, all there is to find of them, and that as JSON, in words and drawn.
 * Inside, lengths are in millimetres and angles in radians, and names say so. What is wrong with an input is data: a
 * `Reading` that is not `ok`, with its findings. Nothing here opens a file or writes one; texts come from a function that
 * is handed in.
 *
 * @module fettle
 */
export { checkAnswer } from './answers/check.ts';
export { grindAnswer } from './answers/grind.ts';
export type { CheckResult } from './clearance/check-result.ts';
export type { DrawInput } from './drawing/fit/draw-input.ts';
export { drawingSvg } from './drawing/fit/drawing-svg.ts';
export { type MarkoutFiles, type MarkoutOptions, markoutFiles } from './drawing/markout/markout-files.ts';
export type { MarkoutFile } from './drawing/markout/sheet-files.ts';
export type { Finding, Reading } from './files/finding.ts';
export { drain, type Progress } from './geometry/progress.ts';
export type { Job } from './job/job.ts';
export { readAnyJob } from './job/read-any-job.ts';
export { type Load, type ReadJob, readJob } from './job/read-job.ts';
export type { Joint } from './joint/joint.ts';
export { placeJob } from './joint/place-job.ts';
export { type Analysis, analyse } from './pipeline/analysis.ts';
export type { Stage } from './pipeline/stage.ts';
export type { PlanResult } from './plan/plan-result.ts';
export { checkText } from './words/check-text.ts';
export { grindText } from './words/grind-text.ts';
