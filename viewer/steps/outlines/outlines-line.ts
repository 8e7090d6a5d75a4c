import type { JobFile } from '../../../src/files/job-file.ts';
import { outlineWords as words } from '../../words/outlines.ts';

/** How far the tracing has come, part by part, in one line. */
export function outlinesLine(job: JobFile): string {
  return `${Object.entries(job.parts)
    .map(([file, part]) => lineOf(job, file, part))
    .join('; ')}.`;
}

function lineOf({ openRuns = [] }: JobFile, file: string, part: JobFile['parts'][string]): string {
  const outlines = part.sections.reduce((sum, { loops }) => sum + loops.length, 0);
  const open = openRuns.filter((run) => run.part === file).length;
  const more = [
    ...(open > 0 ? [words.runsOpen(open)] : []),
    ...(part.viewedFrom === undefined ? [words.sideNotSaid] : []),
  ];
  return [words.tracedSoFar(part.name, outlines), ...more].join(', ');
}
