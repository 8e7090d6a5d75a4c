import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { loadBytes } from '../../../cli/load-text.ts';
import { writeReport } from '../../../cli/report.ts';
import { elementsOf, parsedReport } from '../../support/reports.ts';
import { heard } from '../../support/run-cli.ts';
import { blockFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage } from '../../support/view-server.ts';

it('a report reads each file once, and proves, hashes and holds that version, though all are changed meanwhile', async () => {
  const files = jobFiles();
  const folder = folderWith(files);
  const [fit, out] = [join(folder, 'job.fit.json'), join(folder, 'job.html')];
  await heard(() => writeReport(fit, out, smallPage));
  const undisturbed = readFileSync(out, 'utf8');

  const read: string[] = [];
  const changedAfterwards: typeof loadBytes = (file) => {
    const bytes = loadBytes(file);
    read.push(basename(file));
    writeFileSync(file, 'no longer what it was');
    return bytes;
  };
  await heard(() => writeReport(fit, out, smallPage, { load: changedAfterwards }));

  expect(read.sort()).toEqual(Object.keys(files).sort());
  expect(readFileSync(out, 'utf8')).toBe(undisturbed);
  expect(undisturbed).toContain(createHash('sha256').update(JSON.stringify(blockFile)).digest('hex'));
  const [viewer] = elementsOf(parsedReport(undisturbed), 'script');
  expect(gunzipSync(Buffer.from(viewer?.textContent ?? '', 'base64')).toString()).toContain(
    '"loops":[[[140,-4],[160,-4]',
  );
});
