import { pathBeside } from '../files/file-paths.ts';
import type { Finding, Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import { type FitFile, mostRotating } from '../files/fit-file.ts';
import type { JobFile } from '../files/job-file.ts';
import type { PartFile } from '../files/part-file.ts';
import { asList, fieldOf } from '../files/raw-value.ts';
import { readJson } from '../files/read-json.ts';
import type { Casting } from './casting.ts';
import { fitFindings, holeIds } from './fit-findings.ts';
import { fitOf } from './fit-of-file.ts';
import type { Job } from './job.ts';
import type { Role } from './part-to-casting.ts';
import { castingOfRaw } from './read-part.ts';

/** Gives the text of a file by the path it is named with, or says why it cannot. */
export type Load = (path: string) => Reading<string>;

/** The same of what a file holds, parsed. */
export type LoadValue = (path: string) => Reading<unknown>;

/** A fit and its parts, read and checked, and all of it as it stands in its files. */
export interface ReadJob {
  readonly job: Job;
  readonly whole: JobFile;
}

/**
 * The fit at a path and every part it names, read and checked; or everything that is wrong with any of them, at once. `load`
 * gives the text of each file, and part files are asked for beside the fit. Lengths of the job are in mm, angles in
 * radians. Nothing wrong with a file is thrown, only what `load` throws.
 *
 * @example A fit that does not say where the crank is.
 * ```ts
 * import { readJob } from 'fettle';
 *
 * const fit = { format: 'fettle-fit/1', units: 'mm', fixed: 'block', moving: 'block', clearance: 2 };
 * const box = { id: 'rib', depth: [0, 40], loops: [[[140, -4], [160, -4], [160, 4], [140, 4]]] };
 * const part = { format: 'fettle-part/1', name: 'Block', units: 'mm', viewedFrom: 'face', sections: [box] };
 * const read = readJob('a.fit.json', (path) => ({ ok: true, value: JSON.stringify(path === 'block' ? part : fit) }));
 * const [finding] = read.ok ? [] : read.findings;
 * console.log(finding?.file, finding?.at, finding?.found); // a.fit.json axis nothing
 * ```
 */
export function readJob(fitPath: string, load: Load): Reading<Job> {
  const read = readFit(fitPath, parsed(load));
  return read.ok ? { ok: true, value: read.value.job } : read;
}

/** What files hold, by their texts. */
export const parsed =
  (load: Load): LoadValue =>
  (path) => {
    const text = load(path);
    return text.ok ? readJson(path, text.value) : text;
  };

/**
 * A fit and every part it names, read and checked; or everything that is wrong with any of them, at once. Part files are
 * looked for beside the fit.
 */
export function readFit(fitPath: string, load: LoadValue): Reading<ReadJob> {
  const json = load(fitPath);
  if (!json.ok) return json;
  const raw = json.value;
  const part = (role: Role, named: unknown): ReadPart => readNamedPart(fitPath, named, role, load);
  const fixed = part('fixed', fieldOf(raw, 'fixed'));
  const moving = part('moving', fieldOf(raw, 'moving'));
  const rotating = asList(fieldOf(raw, 'rotating'))
    .slice(0, mostRotating)
    .map((named) => part('rotating', named));
  const own = fitFindings(fitPath, raw, holeIds(fixed.file, fixed.raw), holeIds(moving.file, moving.raw));
  const parts = [fixed, moving, ...rotating];
  const all = [...firstFindings(fitPath, own), ...parts.flatMap((read) => read.findings)];
  if (fixed.casting === null || moving.casting === null || all.length > 0)
    return { ok: false, findings: distinct(all) };
  // the schemas neither change nor add anything, so what has no findings is a fit, or a part, as it stands
  const fit = raw as FitFile;
  const job: Job = {
    fit: fitOf(fitPath, fit, fixed.casting, moving.casting),
    fixed: fixed.casting,
    moving: moving.casting,
    rotating: rotating.flatMap(({ casting }) => casting ?? []),
  };
  const named = parts.map(({ name, raw: held }) => [name, held as PartFile]);
  return { ok: true, value: { job, whole: { format: 'fettle-job/1', fit, parts: Object.fromEntries(named) } } };
}

interface ReadPart {
  /** As the fit has it, and where it is looked for. */
  readonly name: string;
  readonly file: string;
  /** The part as it stands in its file; undefined where that is not to be had. */
  readonly raw: unknown;
  readonly casting: Casting | null;
  readonly findings: readonly Finding[];
}

function readNamedPart(fitPath: string, name: unknown, role: Role, load: LoadValue): ReadPart {
  // a missing or odd name is the schema's to report
  if (typeof name !== 'string') return { name: '', file: '', raw: undefined, casting: null, findings: [] };
  const file = pathBeside(fitPath, name);
  const json = load(file);
  if (!json.ok) return { name, file, raw: undefined, casting: null, findings: json.findings };
  const read = castingOfRaw(file, json.value, role);
  return read.ok
    ? { name, file, raw: json.value, casting: read.value, findings: [] }
    : { name, file, raw: json.value, casting: null, findings: read.findings };
}

/** A file that is named twice is reported once. */
const distinct = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((finding) => [JSON.stringify(finding), finding])).values(),
];
