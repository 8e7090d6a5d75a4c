import type { JobFile, OpenRunFile } from '../../src/files/job-file.ts';
import type { LoopFile } from '../../src/files/part-file.ts';
import { bulgeThrough, vertexAt, type XY, xyOf } from './arc.ts';
import { closedBehind } from './closed-behind.ts';
import { withLoop, withPart } from './part-edits.ts';
import { enclosesNothing, withBulge } from './point-edits.ts';

export const runsOf = (job: JobFile): readonly OpenRunFile[] => job.openRuns ?? [];

/** Changes one open run; null takes it away. */
export function withRun(job: JobFile, index: number, change: (run: OpenRunFile) => OpenRunFile | null): JobFile {
  const runs = runsOf(job).flatMap((run, i) => (i === index ? (change(run) ?? []) : [run]));
  const { openRuns: _, ...rest } = job;
  return runs.length === 0 ? rest : { ...rest, openRuns: runs };
}

/** Begins a run at a point; the metal is taken to be on its left until said otherwise. */
export const withRunFrom = (job: JobFile, part: string, section: string, [x, y]: XY): JobFile => ({
  ...job,
  openRuns: [...runsOf(job), { part, section, points: [[x, y]], metal: 'left' }],
});

/** Goes on to a point: straight, or by the arc over `over`. */
export function withPointAdded(run: OpenRunFile, to: XY, over: XY | null = null): OpenRunFile {
  const points = over === null ? run.points : bentLast(run, over, to);
  return { ...run, points: [...points, vertexAt(to)] };
}

function bentLast({ points }: OpenRunFile, over: XY, to: XY): OpenRunFile['points'] {
  const last = points.length - 1;
  return withBulge(points, last, bulgeThrough(xyOf(points[last] as [number, number]), over, to) ?? 0);
}

export const withMetalOnOtherSide = (run: OpenRunFile): OpenRunFile => ({
  ...run,
  metal: run.metal === 'left' ? 'right' : 'left',
});

/** The outline a run makes when its ends are joined, by the arc over `over` if given; null where it goes round nothing. */
export function closedRun(run: OpenRunFile, over: XY | null = null): LoopFile | null {
  const points = over === null ? run.points : bentLast(run, over, xyOf(run.points[0] as [number, number]));
  return enclosesNothing(points) ? null : points;
}

/** The outline of a run whose metal goes on for its `behind`; null where none is said or an arc is too tight for it. */
export const runClosedBehind = ({ points, metal, behind }: OpenRunFile): LoopFile | null =>
  behind === undefined ? null : closedBehind(points, metal, behind);

/** Puts the outline a run has made into its section, in the run's stead. */
export function withRunClosed(job: JobFile, index: number, loop: LoopFile): JobFile {
  const run = runsOf(job)[index];
  if (run === undefined) return job;
  const section = job.parts[run.part]?.sections.findIndex(({ id }) => id === run.section) ?? -1;
  if (section < 0) return job;
  const added = withPart(job, run.part, (part) => withLoop(part, { list: 'sections', index: section }, loop));
  return withRun(added, index, () => null);
}
