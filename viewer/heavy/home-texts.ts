import { jobEnding } from '../../src/files/file-endings.ts';
import { pathBeside } from '../../src/files/file-paths.ts';
import { fileText } from '../../src/files/file-text.ts';
import { fitFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import { partFile } from '../../src/files/part-file.ts';
import type { TrialFile } from '../../src/files/trial-file.ts';
import { goesIn, trialIn } from '../job/trial-edits.ts';
import { type OpenedTrial, partNames } from './opened-job.ts';

/** What the files of a job would hold, and what they cannot. */
export interface HomeTexts {
  /** By the name the server knows a file by. */
  readonly texts: ReadonlyMap<string, string>;
  /** Parts that are no whole part yet, or no file of the fit that was opened: only a job file holds them. */
  readonly onlyInJob: readonly string[];
  /** There are pictures, open lines or records, which only a job file holds. */
  readonly moreInJob: boolean;
}

/** A job as the text of each file it was opened from: the job file, or the fit, its parts and its trial file. */
export function homeTexts(
  job: JobFile,
  open: string,
  served: readonly string[],
  trial: OpenedTrial | null = null,
): HomeTexts {
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
  const trials = trial?.as ? [[trial.name, trialText(job, trial.as)] as const] : [];
  return { texts: new Map([...fit, ...texts, ...trials]), onlyInJob, moreInJob: hasMore(job, trials.length) };
}

/** What only the file knows stays: its schema, the fit by its name, of which job it was begun. */
const trialText = (job: JobFile, { $schema, fit, ...before }: TrialFile): string => {
  const now = { ...before, ...trialIn(job), fit, goes: [...goesIn(job)] };
  return fileText($schema === undefined ? now : { $schema, ...now });
};

const hasMore = (job: JobFile, trials: number): boolean => {
  const { pictures = [], openRuns = [], records = [] } = job;
  const inTrials = trials > 0 && trialIn(job) !== null ? 1 : 0;
  return pictures.length + openRuns.length + records.length > inTrials;
};
