import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { versionOf } from '../../../cli/view/opened-files.ts';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { viewing } from '../../support/view-server.ts';

const trialOf = (fit: string) => ({ format: 'fettle-trial/1', fit, goes: [{ go: 1 }] });
const parts = ['job.fit.json', 'block.part.json', 'housing.part.json'];

async function trialsServed(files: Record<string, unknown>, jobFile = 'job.fit.json'): Promise<string[]> {
  const folder = folderWith({ ...jobFiles(), ...files });
  const { get } = await viewing({ folder, jobFile: join(folder, jobFile) });
  const { files: served } = JSON.parse((await get('job')).text);
  const names = served.map(({ name }: { name: string }) => name);
  expect(Object.keys(JSON.parse((await get('versions')).text))).toEqual(names);
  return names.filter((name: string) => !parts.includes(name));
}

describe('trial files beside the fit that the viewer opens', () => {
  it('are those that name it', async () => {
    const files = {
      'job.trial.json': trialOf('job.fit.json'),
      'a.trial.json': trialOf('./job.fit.json'),
      'other.trial.json': trialOf('other.fit.json'),
      'away.trial.json': trialOf('../job.fit.json'),
      'notes.json': trialOf('job.fit.json'),
      'broken.trial.json': '{',
    };
    expect(await trialsServed(files)).toEqual(['a.trial.json', 'job.trial.json']);
  });

  it.each(['{', '', '[]', '{"fit":7}'])('are the one named as the fit, whatever is wrong with it: %j', async (text) => {
    expect(await trialsServed({ 'job.trial.json': text })).toEqual(['job.trial.json']);
  });

  it('are none where the one named as the fit is of another fit', async () => {
    expect(await trialsServed({ 'job.trial.json': trialOf('other.fit.json') })).toEqual([]);
  });

  it('are none of a job in one file, which has its own', async () => {
    const whole = { format: 'fettle-job/1', fixed: 'a' };
    expect(
      await trialsServed({ 'job.job.json': whole, 'job.trial.json': trialOf('job.job.json') }, 'job.job.json'),
    ).toEqual(['job.job.json']);
  });

  it('are saved like any open file: over the version that was read, which stays beside it', async () => {
    const before = JSON.stringify(trialOf('job.fit.json'));
    const { put, folder } = await viewing({ folder: folderWith({ ...jobFiles(), 'job.trial.json': before }) });
    const after = JSON.stringify({ ...trialOf('job.fit.json'), goes: [] });
    expect((await put('job.trial.json', after, 'another')).status).toBe(412);
    expect((await put('new.trial.json', after, '')).status).toBe(403);
    expect((await put('job.trial.json', after, versionOf(Buffer.from(before)))).status).toBe(200);
    expect(readFileSync(join(folder, 'job.trial.json'), 'utf8')).toBe(after);
    expect(readFileSync(join(folder, 'job.trial.json.before'), 'utf8')).toBe(before);
  });
});
