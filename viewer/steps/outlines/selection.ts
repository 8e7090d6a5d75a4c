import type { JobFile } from '../../../src/files/job-file.ts';
import type { CircleFile, Points, XY } from '../../job/arc.ts';
import { holderAt, type Place, withLoopChanged, withPart } from '../../job/part-edits.ts';
import { enclosesNothing, type PointList } from '../../job/point-edits.ts';
import { runsOf, withRun } from '../../job/run-edits.ts';
import { tidiedPoints } from '../../job/tidied.ts';

/** What is opened in the list: one place of outlines, or one of the other lists. */
export type OpenEntry = Place | 'holes' | 'walls' | null;

/** What is chosen on the drawing; `vertex` is the point of it that keys move. */
export type Selection =
  | { readonly kind: 'loop'; readonly place: Place; readonly loop: number; readonly vertex: number | null }
  | { readonly kind: 'run'; readonly run: number; readonly vertex: number | null }
  | { readonly kind: 'hole'; readonly hole: number };

/** What taps on the drawing do. */
export type Tool =
  | { readonly kind: 'choose' }
  | { readonly kind: 'trace'; readonly arc: 'no' | 'next' | XY }
  | { readonly kind: 'circle'; readonly through: readonly XY[] }
  | { readonly kind: 'hole' }
  | { readonly kind: 'dowels' };

/** The state of the step, beside the job itself. */
export interface Looking {
  readonly opened: OpenEntry;
  readonly chosen: Selection | null;
  readonly tool: Tool;
  /** Why the last thing asked for was not done. */
  readonly said: string;
}

export const choosing: Tool = { kind: 'choose' };

export const samePlace = (a: OpenEntry, b: OpenEntry): boolean =>
  typeof a === 'object' && typeof b === 'object' && a !== null && b !== null
    ? a.list === b.list && a.index === b.index
    : a === b;

/** The points of the chosen outline or run; null for a circle, a hole, or what is gone. */
export function pointsOf(job: JobFile, file: string, chosen: Selection | null): PointList | null {
  const part = job.parts[file];
  if (chosen === null || part === undefined || chosen.kind === 'hole') return null;
  if (chosen.kind === 'run') return runsOf(job)[chosen.run]?.points ?? null;
  const loop = holderAt(part, chosen.place)?.loops[chosen.loop];
  return loop === undefined || 'circle' in loop ? null : loop;
}

export function circleOf(job: JobFile, file: string, chosen: Selection | null): CircleFile | null {
  const part = job.parts[file];
  if (chosen?.kind !== 'loop' || part === undefined) return null;
  const loop = holderAt(part, chosen.place)?.loops[chosen.loop];
  return loop !== undefined && 'circle' in loop ? loop : null;
}

/** The job with other points in what is chosen; with too few, or null, it is taken away. */
export function withPoints(job: JobFile, file: string, chosen: Selection, points: Points | null): JobFile {
  if (chosen.kind === 'hole') return job;
  if (chosen.kind === 'run') {
    return withRun(job, chosen.run, (run) =>
      points === null || points.length === 0 ? null : { ...run, points: tidiedPoints(points) },
    );
  }
  const loop = points === null || enclosesNothing(points) ? null : points;
  return withPart(job, file, (part) => withLoopChanged(part, chosen.place, chosen.loop, loop));
}

export const withCircle = (job: JobFile, file: string, chosen: Selection, circle: CircleFile): JobFile =>
  chosen.kind === 'loop'
    ? withPart(job, file, (part) => withLoopChanged(part, chosen.place, chosen.loop, circle))
    : job;

/** The place of outlines that is opened. */
export function openedPlace(job: JobFile, file: string, opened: OpenEntry): Place | null {
  const part = job.parts[file];
  if (opened === null || typeof opened === 'string' || part === undefined) return null;
  return holderAt(part, opened) === undefined ? null : opened;
}

/** The section that is opened, by its id. */
export function openedSection(job: JobFile, file: string, opened: OpenEntry): string | null {
  const place = openedPlace(job, file, opened);
  return place?.list === 'sections' ? (job.parts[file]?.sections[place.index]?.id ?? null) : null;
}
