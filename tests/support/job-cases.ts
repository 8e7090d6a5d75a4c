import { readdirSync, readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { jobInFile, readJobFile } from '../../src/job/read-job-file.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { placeJob } from '../../src/joint/place-job.ts';

/** A figure of what is found, how near the truth it must be, and why so near. */
interface Figure {
  readonly path: string;
  readonly value: number;
  readonly tolerance: number;
  readonly why: string;
}

/** A case that any implementation could run: a job file, what its answer must hold, and figures with their tolerance. */
export interface JobCase {
  readonly title: string;
  readonly job: string;
  readonly source: string;
  readonly expected: object;
  readonly near: readonly Figure[];
}

/** The cases of a folder: `cases.json`, and the job files beside it that they name. */
export class JobCases<Case extends JobCase> {
  readonly cases: readonly Case[];
  readonly #folder: string;

  constructor(folder: URL) {
    this.#folder = folder.pathname;
    this.cases = JSON.parse(readFileSync(`${this.#folder}cases.json`, 'utf8')) as readonly Case[];
  }

  jointOf(name: string): Joint {
    const file = `${this.#folder}jobs/${name}.job.json`;
    const read = readJobFile(file, readFileSync(file, 'utf8'));
    const job = read.ok ? jobInFile(read.value, file) : read;
    const joint = job.ok ? placeJob(job.value) : job;
    if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
    return joint.value;
  }

  /** Job files that no case names. */
  withoutCase(): string[] {
    const named = readdirSync(`${this.#folder}jobs`).map((file) => file.replace('.job.json', ''));
    return named.filter((name) => !this.cases.some(({ job }) => job === name));
  }
}

/** What is found holds all that a case expects of it. */
export function expectHolds(found: object, { expected, near }: JobCase): void {
  expect(found).toMatchObject(expected);
  for (const { path, value, tolerance } of near)
    expect(Math.abs((valueAt(found, path) as number) - value), path).toBeLessThanOrEqual(tolerance);
}

const valueAt = (found: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], found);
