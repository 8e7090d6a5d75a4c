import type { Reading } from '../files/finding.ts';
import { firstFindings } from '../files/first-findings.ts';
import type { PartFile } from '../files/part-file.ts';
import { readJson } from '../files/read-json.ts';
import type { Casting } from './casting.ts';
import { partFindings } from './part-findings.ts';
import { castingOf, type Role } from './part-to-casting.ts';

/** A part file's text as the casting its role makes of it, or everything that is wrong with it. */
export function readPart(file: string, text: string, role: Role): Reading<Casting> {
  const json = readJson(file, text);
  return json.ok ? castingOfRaw(file, json.value, role) : json;
}

const read = new WeakMap<object, Map<string, Reading<Casting>>>();

/**
 * The same of a part that has been parsed already. A part is read once in each of its roles for as long as it is in use:
 * what stays as it was in an edited job keeps its casting, and with it all that is known of its outlines.
 */
export function castingOfRaw(file: string, raw: unknown, role: Role): Reading<Casting> {
  if (typeof raw !== 'object' || raw === null) return readAnew(file, raw, role);
  const known = read.get(raw) ?? new Map<string, Reading<Casting>>();
  const as = `${role} ${file}`;
  const casting = known.get(as) ?? readAnew(file, raw, role);
  read.set(raw, known.set(as, casting));
  return casting;
}

function readAnew(file: string, raw: unknown, role: Role): Reading<Casting> {
  const findings = partFindings(file, raw);
  if (findings.length > 0) return { ok: false, findings: firstFindings(file, findings) };
  // the schema neither changes nor adds anything, so what has no findings is a part as it stands
  return { ok: true, value: castingOf(file, raw as PartFile, role) };
}
