import { readFileSync } from 'node:fs';
import type { Reading } from '../../src/files/finding.ts';
import { readJob } from '../../src/job/read-job.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { demos } from './demos.ts';

/** Keys whose numbers are no lengths. */
const notLengths: ReadonlySet<string> = new Set(['turn', 'density', 'share']);

/** A fit or a part as its file has it, in inches where it is in millimetres; the bulge of a vertex stays as it is. */
export function inInches(file: unknown): unknown {
  if (typeof file === 'number') return file / 25.4;
  if (Array.isArray(file)) {
    const isBulged = file.length === 3 && file.every((item) => typeof item === 'number');
    return file.map((item, i) => (isBulged && i === 2 ? item : inInches(item)));
  }
  if (typeof file !== 'object' || file === null || isInInches(file)) return file;
  return Object.fromEntries(
    Object.entries(file).map(([key, value]) => [
      key,
      key === 'units' ? 'in' : notLengths.has(key) ? value : inInches(value),
    ]),
  );
}

const isInInches = (file: object): boolean => 'units' in file && file.units === 'in';

/** A demo of `profiles`, read and dowelled up as it stands, or with all its files written in inches. */
export function demoIn(units: 'mm' | 'in', demo: keyof typeof demos): Joint {
  const load = (path: string): Reading<string> => {
    const text = readFileSync(path, 'utf8');
    return { ok: true, value: units === 'mm' ? text : JSON.stringify(inInches(JSON.parse(text))) };
  };
  const job = readJob(new URL(`../../profiles/${demos[demo]}.fit.json`, import.meta.url).pathname, load);
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}
