import { createHash } from 'node:crypto';
import { readdirSync, realpathSync } from 'node:fs';
import { basename, dirname, isAbsolute, relative, sep } from 'node:path';
import { fitEnding, trialEnding } from '../../src/files/file-endings.ts';
import { pathBeside } from '../../src/files/file-paths.ts';
import { mostRotating } from '../../src/files/fit-file.ts';
import { fieldOf, listOf, textOf } from '../../src/files/raw-value.ts';
import { readJson } from '../../src/files/read-json.ts';
import { decoded, loadBytes } from '../load-text.ts';

/** A file as it stands on disk; `version` is the SHA-256 of its bytes, hex. */
export interface Standing {
  readonly name: string;
  readonly path: string;
  readonly text: string;
  readonly bytes: Uint8Array;
  readonly version: string;
}

/**
 * The names of what is open: the job's own file; of a fit also the parts that it names now, as it writes them, and the
 * trial files beside it that name it.
 */
export function namesOpen(jobFile: string | null): string[] {
  if (jobFile === null) return [];
  const own = basename(jobFile);
  if (!own.endsWith(fitEnding)) return [own];
  const fit = standing(jobFile, own);
  return [...new Set([own, ...(fit === null ? [] : partNames(fit)), ...trialNames(jobFile, own)])];
}

/** The trial file named as the fit is told of even where nobody can say what fit it names. */
function trialNames(jobFile: string, own: string): string[] {
  const namedAlike = own.slice(0, -fitEnding.length) + trialEnding;
  return namesBeside(jobFile).filter((name) => {
    if (!name.endsWith(trialEnding)) return false;
    const trial = standing(jobFile, name);
    const json = trial && readJson(name, trial.text);
    const fit = json?.ok ? textOf(json.value, 'fit') : undefined;
    return fit === undefined ? name === namedAlike : pathBeside('', fit) === own;
  });
}

function namesBeside(jobFile: string): string[] {
  try {
    return readdirSync(dirname(jobFile)).sort();
  } catch {
    return [];
  }
}

function partNames({ name, text }: Standing): string[] {
  const json = readJson(name, text);
  if (!json.ok) return [];
  const rotating = listOf(json.value, 'rotating').slice(0, mostRotating);
  const named = [fieldOf(json.value, 'fixed'), fieldOf(json.value, 'moving'), ...rotating];
  return named.filter((each) => typeof each === 'string');
}

/** One of the open files as it stands; null where it is not to be had. */
export function standing(jobFile: string, name: string): Standing | null {
  const path = realPathOf(jobFile, name);
  const bytes = path === null ? null : loadBytes(path);
  if (path === null || !bytes?.ok) return null;
  const text = decoded(path, bytes.value);
  return text.ok ? { name, path, text: text.value, bytes: bytes.value, version: versionOf(bytes.value) } : null;
}

export const versionOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Where a file really lies, links followed; null where there is none, or it lies outside the job's folder. */
function realPathOf(jobFile: string, name: string): string | null {
  try {
    const place = realpathSync(pathBeside(jobFile, name));
    return place.endsWith('.json') && isInside(realpathSync(dirname(jobFile)), place) ? place : null;
  } catch {
    return null;
  }
}

function isInside(folder: string, place: string): boolean {
  const way = relative(folder, place);
  return way !== '' && way.split(sep)[0] !== '..' && !isAbsolute(way);
}
