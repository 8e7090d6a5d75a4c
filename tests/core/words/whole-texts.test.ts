import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openJob } from '../../../cli/open-job.ts';
import { inInches } from '../../support/inch-demos.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const profiles = resolve('profiles');
const planJobs = resolve('tests/conformance/plan/jobs');

/** Jobs that between them bring up most of what a check or a plan can say. */
const jobs: Readonly<Record<string, string>> = {
  'transfer-case': `${profiles}/marsh-carrier/transfer-case.fit.json`,
  starter: `${profiles}/starter-boss/starter.fit.json`,
  adapter: `${profiles}/sae-3-adapter/adapter.fit.json`,
  ...Object.fromEntries(
    [
      'ball-at-a-flange',
      'flange-over-a-boss-gauged',
      'hole-too-near',
      'metal-of-two-sections',
      'mirrored',
      'never-near',
      'reading-at-its-place',
      'thin-floor',
      'through-the-mating-face',
    ].map((name) => [name, `${planJobs}/${name}.job.json`]),
  ),
};

/** What `check` and `grind` say of a job, whole, with their exit codes. */
async function said(file: string, units: 'mm' | 'in'): Promise<string> {
  const { whole } = openJob(file);
  const folder = folderWith();
  const job = join(folder, 'job.job.json');
  writeFileSync(job, JSON.stringify(units === 'in' ? inInches(whole) : whole));
  const told: string[] = [];
  for (const command of ['check', 'grind']) {
    const { code, stdout, stderr } = await runCli(command, job);
    told.push(`$ fettle ${command} job.job.json\n${stdout}${stderr}exit ${code}\n`);
  }
  return told.join('\n').replaceAll(`${folder}/`, '');
}

describe('the whole text of a check and a plan', () => {
  for (const [name, file] of Object.entries(jobs)) {
    it.each(['mm', 'in'] as const)(
      `of ${name}, all its files in %s, is as it was, each length in that unit`,
      async (units) => {
        const text = await said(file, units);
        await expect(text).toMatchFileSnapshot(`../../snapshots/${name}.${units}.txt`);
        const strange = units === 'in' ? /\d ?[mc]m[²³]?\b.*/g : /\d ?in[²³]?\b.*/g;
        expect(text.match(strange) ?? []).toEqual([]);
      },
      120_000,
    );
  }
});
