import { pathBeside } from '../files/file-paths.ts';
import type { Finding, Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import { type FitFile, mostRotating } from '../files/fit-file.ts';
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

/**
 * A fit and every part it names, read and checked; or everything that is wrong with any of them, at once.
 * Part files are looked for beside the fit.
 */
export function readJob(fitPath: string, load: Load): Reading<Job> {
  const json = readRaw(fitPath, load);
  if (!json.ok) return json;
  const raw = json.value;
  const part = (role: Role, named: unknown): ReadPart => readNamedPart(fitPath, named, role, load);
  const fixed = part('fixed', fieldOf(raw, 'fixed'));
  const moving = part('moving', fieldOf(raw, 'moving'));
  const rotating = asList(fieldOf(raw, 'rotating'))
    .slice(0, mostRotating)
    .map((named) => part('rotating', named));
  const own = fitFindings(fitPath, raw, holeIds(fixed.file, fixed.raw), holeIds(moving.file, moving.raw));
  const all = [...firstFindings(fitPath, own), ...[fixed, moving, ...rotating].flatMap((read) => read.findings)];
  if (fixed.casting === null || moving.casting === null || all.length > 0)
    return { ok: false, findings: distinct(all) };
  // the schema neither changes nor adds anything, so what has no findings is a fit as it stands
  return {
    ok: true,
    value: {
      fit: fitOf(fitPath, raw as FitFile, fixed.casting, moving.casting),
      fixed: fixed.casting,
      moving: moving.casting,
      rotating: rotating.flatMap(({ casting }) => casting ?? []),
    },
  };
}

interface ReadPart {
  readonly file: string;
  /** The part as it stands in its file; undefined where that is not to be had. */
  readonly raw: unknown;
  readonly casting: Casting | null;
  readonly findings: readonly Finding[];
}

function readNamedPart(fitPath: string, named: unknown, role: Role, load: Load): ReadPart {
  // a missing or odd name is the schema's to report
  if (typeof named !== 'string') return { file: '', raw: undefined, casting: null, findings: [] };
  const file = pathBeside(fitPath, named);
  const json = readRaw(file, load);
  if (!json.ok) return { file, raw: undefined, casting: null, findings: json.findings };
  const read = castingOfRaw(file, json.value, role);
  return read.ok
    ? { file, raw: json.value, casting: read.value, findings: [] }
    : { file, raw: json.value, casting: null, findings: read.findings };
}

function readRaw(file: string, load: Load): Reading<unknown> {
  const text = load(file);
  return text.ok ? readJson(file, text.value) : text;
}

/** A file that is named twice is reported once. */
const distinct = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((finding) => [JSON.stringify(finding), finding])).values(),
];
