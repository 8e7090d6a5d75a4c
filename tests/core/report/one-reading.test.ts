import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { writeReport } from '../../../cli/report.ts';
import { elementsOf, parsedReport } from '../../support/reports.ts';
import { heard } from '../../support/run-cli.ts';
import { blockFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage } from '../../support/view-server.ts';

/** What is read while a command runs, and what happens to the disk right afterwards. */
const disk = vi.hoisted(() => ({ read: [] as string[], afterReading: (_file: string): void => {} }));

vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>();
  const readFileSync = (...given: Parameters<typeof real.readFileSync>): unknown => {
    const bytes = real.readFileSync(...given);
    disk.read.push(String(given[0]));
    disk.afterReading(String(given[0]));
    return bytes;
  };
  return { ...real, readFileSync, default: { ...real, readFileSync } };
});

const files = jobFiles();
const longerRib = JSON.stringify(blockFile).replaceAll('160', '170');

describe('a report', () => {
  beforeEach(() => {
    disk.read.length = 0;
    disk.afterReading = () => {};
  });

  it('reads each file of its job once', async () => {
    const folder = folderWith(files);
    await heard(() => writeReport(join(folder, 'job.fit.json'), join(folder, 'job.html'), smallPage));
    const read = disk.read.filter((file) => file.startsWith(folder)).map((file) => basename(file));
    expect(read.sort()).toEqual(Object.keys(files).sort());
  });

  it('proves, hashes and holds one version of a file that is changed while it is made', async () => {
    const folder = folderWith(files);
    const [fit, block, out] = ['job.fit.json', 'block.part.json', 'job.html'].map((name) => join(folder, name));
    await heard(() => writeReport(fit as string, out as string, smallPage));
    const ofTheFirst = readFileSync(out as string, 'utf8');
    disk.afterReading = (file) => {
      if (file === block) writeFileSync(file, longerRib);
    };
    await heard(() => writeReport(fit as string, out as string, smallPage));
    expect(readFileSync(block as string, 'utf8')).toBe(longerRib);
    expect(readFileSync(out as string, 'utf8')).toBe(ofTheFirst);
    const hash = createHash('sha256').update(JSON.stringify(blockFile)).digest('hex');
    expect(ofTheFirst).toContain(hash);
    const [viewer] = elementsOf(parsedReport(ofTheFirst), 'script');
    expect(gunzipSync(Buffer.from(viewer?.textContent ?? '', 'base64')).toString()).toContain(
      '"loops":[[[140,-4],[160,-4]',
    );
  });
});
