import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCli } from '../../support/run-cli.ts';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';

describe('fettle view', () => {
  it.each(['80', '65536', 'abc', '0', '-1', '8080x', '1e4'])('refuses the port %s', async (port) => {
    const { code, stderr } = await runCli('view', `--port=${port}`, '--no-open');
    expect(code).toBe(2);
    expect(stderr).toContain(`--port: found ${port}; expected a number from 1024 to 65535.`);
  });

  it.each([
    ['block.part.json', 'found a file called block.part.json; expected a fit, *.fit.json, or a job, *.job.json'],
    ['none.fit.json', 'found no such file'],
    ['away.fit.json', 'found a link that leads out of its folder'],
  ])('refuses to open %s', async (name, words) => {
    const folder = folderWith(jobFiles());
    symlinkSync(join(folderWith(jobFiles()), 'job.fit.json'), join(folder, 'away.fit.json'));
    const { code, stdout, stderr } = await runCli('view', join(folder, name), '--no-open');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(words);
  });
});
