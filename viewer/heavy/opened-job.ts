import type { z } from 'zod';
import { fitEnding, jobEnding, partEnding, trialEnding } from '../../src/files/file-endings.ts';
import { pathBeside } from '../../src/files/file-paths.ts';
import type { Finding, Reading } from '../../src/files/finding.ts';
import { firstFindings } from '../../src/files/first-findings.ts';
import { type FitFile, fitFile } from '../../src/files/fit-file.ts';
import { type JobFile, type PartDraft, partDraft } from '../../src/files/job-file.ts';
import { readJson } from '../../src/files/read-json.ts';
import { schemaFindings } from '../../src/files/schema-findings.ts';
import { type TrialFile, trialFile } from '../../src/files/trial-file.ts';
import { mmPer, type Units } from '../../src/job/lengths.ts';
import { readJobFile } from '../../src/job/read-job-file.ts';
import { readTrialFile } from '../../src/trial/read-trial.ts';
import { withTrial } from '../job/trial-edits.ts';

/** A file as it was opened: its name, or its path as a fit names it, and its text. */
export interface OpenedFile {
  readonly name: string;
  readonly text: string;
}

/** A job made of the files that were opened. */
export interface OpenedJob<Job = JobFile> {
  readonly job: Job;
  /** The file the job goes by: the job, else the fit, else null. */
  readonly from: string | null;
  /** Parts that the fit names and that are still wanted. */
  readonly missing: readonly string[];
  /** The trial file beside the fit; left out where there is none. */
  readonly trial?: OpenedTrial;
}

/** A trial file that was opened with a fit, or that could not be read and stays as it is. */
export type OpenedTrial =
  | { readonly name: string; readonly as: TrialFile }
  | { readonly name: string; readonly as: null; readonly fault: Finding };

/** Between bolted castings at home and on the way in, by common practice; mm. */
const usualClearanceMm = { home: 2, wayIn: 1 };

/**
 * The job in the files opened: a job file; or a fit with its parts; or parts alone, the first of them fixed. Parts that
 * a job names, one opened with them or the one `present`, go into it. Everything that is wrong with any of the files is
 * told at once, but of trial fits, without which a job opens as well.
 */
export function openedJob(files: readonly OpenedFile[], present: JobFile | null = null): Reading<OpenedJob> {
  const ending = (end: string): OpenedFile[] => files.filter(({ name }) => name.endsWith(end));
  const [whole, ...more] = [...ending(jobEnding), ...ending(fitEnding)];
  if (more.length > 0) return refused(more.map(oneAtATime));
  const wholes = [jobEnding, fitEnding, trialEnding];
  const apart = files.filter(({ name }) => !wholes.some((end) => name.endsWith(end)));
  const parts = apart.map(({ name, text }) => readAs(partDraft, name, text, (part) => ({ name, part })));
  const job = whole === undefined ? null : readWhole(whole);
  const faults = [job, ...parts].flatMap((read) => (read === null || read.ok ? [] : read.findings));
  if (faults.length > 0) return refused(faults);
  const opened = parts.flatMap((part) => (part.ok ? [part.value] : []));
  if (job?.ok && whole !== undefined)
    return withTrialOf(whole.name, ending(trialEnding), withParts(job.value, opened, whole.name));
  if (opened.length === 0) return refused([nothingToOpen]);
  const asked = present !== null && opened.every(({ name }) => nameIn(present.fit, name) !== null);
  return withParts(asked ? present : emptyJob(fitOfParts(opened)), opened, null);
}

/** The trial file that is named as its fit goes before the others, which are left alone. */
function withTrialOf(fit: string, trials: readonly OpenedFile[], read: Reading<OpenedJob>): Reading<OpenedJob> {
  const namedAlike = fit.slice(0, -fitEnding.length) + trialEnding;
  const chosen = trials.find(({ name }) => name === namedAlike) ?? trials[0];
  if (chosen === undefined || !read.ok || !fit.endsWith(fitEnding)) return read;
  const { name, text } = chosen;
  const trial = readTrialFile(name, text);
  if (!trial.ok) {
    const [fault] = trial.findings;
    return fault === undefined ? read : { ok: true, value: { ...read.value, trial: { name, as: null, fault } } };
  }
  const as = trial.value;
  const job = as.goes.length === 0 ? read.value.job : withTrial(read.value.job, as);
  return { ok: true, value: { ...read.value, job, trial: { name, as } } };
}

/** The parts a fit names, each once. */
export const partNames = ({ fixed, moving, rotating = [] }: FitFile): string[] => [
  ...new Set([fixed, moving, ...rotating]),
];

interface NamedPart {
  readonly name: string;
  readonly part: PartDraft;
}

const readWhole = ({ name, text }: OpenedFile): Reading<JobFile> => {
  if (name.endsWith(fitEnding)) return readAs(fitFile, name, text, (fit) => emptyJob(plainNames(fit)));
  const read = readJobFile(name, text);
  if (!read.ok) return read;
  const findings = trialFindings(name, read.value);
  if (findings.length > 0) return { ok: false, findings: firstFindings(name, findings) };
  return { ok: true, value: { ...read.value, fit: plainNames(read.value.fit) } };
};

/** What the page goes on with as trial fits must be such. */
const trialFindings = (name: string, { records = [] }: JobFile): Finding[] =>
  records.flatMap((record, i) =>
    record.format !== 'fettle-trial/1'
      ? []
      : schemaFindings(name, trialFile, record).map((finding) => ({ ...finding, at: `records[${i}].${finding.at}` })),
  );

const emptyJob = (fit: FitFile): JobFile => ({ format: 'fettle-job/1', fit, parts: {} });

function withParts(into: JobFile, opened: readonly NamedPart[], from: string | null): Reading<OpenedJob> {
  const named = opened.map(({ name, part }) => [nameIn(into.fit, name) ?? name, part] as const);
  const job = { ...into, parts: { ...into.parts, ...Object.fromEntries(named) } };
  return { ok: true, value: { job, from, missing: missingIn(job) } };
}

const missingIn = ({ fit, parts }: JobFile): string[] => partNames(fit).filter((name) => !Object.hasOwn(parts, name));

/** The name a fit has for a file: its path as written, or else its last name, which is all a browser tells of a file. */
function nameIn(fit: FitFile, name: string): string | null {
  const plain = pathBeside('', name);
  const names = partNames(fit);
  return names.find((each) => each === plain) ?? names.find((each) => lastName(each) === lastName(plain)) ?? null;
}

const lastName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;

/** A fit with the names of its parts as a job knows them: without a leading `./`. */
function plainNames(fit: FitFile): FitFile {
  const plain = (name: string): string => pathBeside('', name);
  const rotating = fit.rotating === undefined ? {} : { rotating: fit.rotating.map(plain) };
  return { ...fit, fixed: plain(fit.fixed), moving: plain(fit.moving), ...rotating };
}

/** A first fit for parts that came without one. */
function fitOfParts(parts: readonly NamedPart[]): FitFile {
  const [fixed, moving] = parts;
  const units: Units = fixed?.part.units ?? 'mm';
  const rounded = (mm: number): number => Number((mm / mmPer(units)).toFixed(2));
  return {
    format: 'fettle-fit/1',
    units,
    fixed: fixed?.name ?? `fixed${partEnding}`,
    moving: moving?.name ?? `moving${partEnding}`,
    axis: [0, 0],
    clearance: { home: rounded(usualClearanceMm.home), wayIn: rounded(usualClearanceMm.wayIn) },
  };
}

function readAs<S extends z.ZodType, T>(
  schema: S,
  name: string,
  text: string,
  use: (value: z.infer<S>) => T,
): Reading<T> {
  const json = readJson(name, text);
  if (!json.ok) return json;
  const findings = schemaFindings(name, schema, json.value);
  if (findings.length > 0) return { ok: false, findings: firstFindings(name, findings) };
  // the schema neither changes nor adds anything, so what has no findings is as it stands
  return { ok: true, value: use(json.value as z.infer<S>) };
}

const refused = (findings: readonly Finding[]): Reading<never> => ({ ok: false, findings });

const oneAtATime = ({ name }: OpenedFile): Finding => ({
  file: name,
  at: '',
  found: 'a second job or fit',
  expected: 'one at a time',
});

const nothingToOpen: Finding = {
  file: '',
  at: '',
  found: 'no file of Fettle',
  expected: `files that end in ${jobEnding}, ${fitEnding} or ${partEnding}`,
};
