import { jobEnding } from '../../src/files/file-endings.ts';
import { pathBeside } from '../../src/files/file-paths.ts';
import { fileText } from '../../src/files/file-text.ts';
import { fitFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { partFile } from '../../src/files/part-file.ts';
import { partNames } from './opened-job.ts';

/** What the files of a job would hold, and what they cannot. */
export interface HomeTexts {
  /** By the name the server knows a file by. */
  readonly texts: ReadonlyMap<string, string>;
  /** Parts that are no whole part yet, or no file of the fit that was opened: only a job file holds them. */
  readonly onlyInJob: readonly string[];
  /** There are pictures, open lines or records, which only a job file holds. */
  readonly moreInJob: boolean;
}

/** A job as the text of each file it was opened from: the job file, or the fit and its parts. */
export function homeTexts(job: JobFile, open: string, served: readonly string[]): HomeTexts {
  if (open.endsWith(jobEnding)) return { texts: new Map([[open, fileText(job)]]), onlyInJob: [], moreInJob: false };
  const byName = new Map(served.map((name) => [pathBeside('', name), name]));
  const parts = partNames(job.fit).flatMap((name) => {
    const part = Object.hasOwn(job.parts, name) ? job.parts[name] : undefined;
    return part === undefined ? [] : [[name, part] as const];
  });
  const whole = parts.filter(([name, part]) => byName.has(name) && partFile.safeParse(part).success);
  const texts = whole.map(([name, part]) => [byName.get(name) ?? name, fileText(part)] as const);
  const fit = fitFile.safeParse(job.fit).success ? [[open, fileText(job.fit)] as const] : [];
  const onlyInJob = parts.filter((part) => !whole.includes(part)).map(([name]) => name);
  return { texts: new Map([...fit, ...texts]), onlyInJob, moreInJob: hasMore(job) };
}

const hasMore = ({ pictures = [], openRuns = [], records = [] }: JobFile): boolean =>
  pictures.length + openRuns.length + records.length > 0;
