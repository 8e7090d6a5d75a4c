import * as fs from 'node:fs';
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { BrowserContext, Download, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import type { Disk } from '../../../cli/save.ts';
import { type Serving, serve } from '../../../cli/view/serve.ts';
import { failingDisk } from '../../support/failing-disk.ts';
import { runCli } from '../../support/run-cli.ts';
import { jobFiles } from '../../support/small-job.ts';
import { launchBrowser } from '../support/browser.ts';
import { newFolder } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { heard, settled, toldInFull, viewerFile } from '../support/viewer-page.ts';

const transferCase = 'profiles/marsh-carrier/transfer-case.fit.json';
const starter = 'profiles/starter-boss/starter.fit.json';

describeInBrowser('a fit with its parts in the viewer, served to its page alone', () => {
  let browser: BrowserContext;
  let html: string;
  let serving: Serving;
  let page: Page;
  let complaints: string[];
  let folder: string;
  let job: string;

  beforeAll(async () => {
    html = readFileSync(viewerFile(), 'utf8');
    browser = await launchBrowser(newFolder());
  });
  afterEach(async () => {
    await page.close();
    await serving.close();
  });
  afterAll(() => browser?.close());

  const fit = (): string => join(folder, job);
  const standing = (): Record<string, string> =>
    Object.fromEntries(
      readdirSync(folder)
        .filter((name) => name.endsWith('.json'))
        .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
    );

  /** A worked job, or a small one where it is the disk that matters. */
  async function view(on: string | Disk): Promise<void> {
    folder = newFolder();
    if (typeof on === 'string') cpSync(dirname(on), folder, { recursive: true });
    else for (const [name, file] of Object.entries(jobFiles())) writeFileSync(join(folder, name), JSON.stringify(file));
    job = typeof on === 'string' ? basename(on) : 'job.fit.json';
    const disk = typeof on === 'string' ? fs : on;
    serving = await serve({ html, jobFile: fit(), disk, mostBytes: 64 * 1024 * 1024 }, 0);
    page = await browser.newPage();
    complaints = [];
    heard(page, complaints);
    await page.goto(serving.address);
    await settled(page);
  }
  const open = async (step: string): Promise<void> => {
    const line = page.locator(`.steps [data-step="${step}"] button.line`);
    if ((await line.getAttribute('aria-expanded')) === 'false') await line.click();
    await settled(page);
  };
  const wayInField = () => page.getByRole('textbox', { name: /^on the way in/ });
  const askWayIn = async (clearance: string): Promise<void> => {
    await open('grind');
    await wayInField().fill(clearance);
    await wayInField().press('Enter');
    await settled(page);
  };
  const said = () => page.locator('.telling').textContent();
  const save = () => page.getByRole('button', { name: 'Save the job' }).click();

  it('is edited, saved in place, and checked by the command line to what the page says', async () => {
    await view(transferCase);
    const before = standing();
    await open('offer-up');
    const turn = page.locator('.positions').getByRole('textbox', { name: /^turn/ });
    await turn.first().fill('18');
    await turn.first().press('Enter');
    await settled(page);
    await askWayIn('0.75');
    await open('offer-up');
    const text = await toldInFull(page);
    await save();
    await expect.poll(said).toContain('Saved: transfer-case.fit.json.');

    const after = standing();
    const changed = Object.keys(after).filter((name) => after[name] !== before[name]);
    expect(changed).toEqual(['transfer-case.fit.json']);
    expect(readFileSync(`${fit()}.before`, 'utf8')).toBe(before['transfer-case.fit.json']);
    const asked = JSON.parse(after['transfer-case.fit.json'] ?? '');
    expect([asked.offerUp[0].turn, asked.clearance.wayIn]).toEqual([18, 0.75]);

    const { install, home } = JSON.parse((await runCli('check', fit(), '--json')).stdout);
    const slider = page.getByRole('slider', { name: 'The way in' });
    await slider.press('End');
    await expect
      .poll(() => slider.getAttribute('aria-valuetext'))
      .toContain(`${home.clearanceMm.toFixed(1)} mm ${home.state}`);
    const answer = (words: string): string => words.split('\nNext\n')[0] ?? '';
    expect(answer(text)).toBe(answer((await runCli('check', fit())).stdout));
    expect(text).toContain(install.state === 'fouls' ? 'FOULS' : `${install.clearanceMm.toFixed(1)} mm`);
    expect(complaints).toEqual([]);
  });

  it('goes through every step, every file handed over, without a complaint of its policy', async () => {
    await view(starter);
    for (const step of ['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out']) await open(step);
    await page.locator('.page img').first().waitFor();
    const broken = await page
      .locator('.page img')
      .evaluateAll((images) => Promise.all(images.map((image) => (image as HTMLImageElement).decode())).then(() => 0));
    expect(broken).toBe(0);
    const handed: Download[] = [];
    page.on('download', (download) => handed.push(download));
    for (const name of ['PDF, true to scale', 'SVG, true to scale', 'DXF', 'Marking-out table', 'Drawing', 'Report']) {
      handed.length = 0;
      await page.getByRole('button', { name, exact: true }).click();
      await expect.poll(() => handed.map((file) => file.suggestedFilename())).toHaveLength(1);
      // the newest is listed first
      const newest = page.getByRole('list', { name: 'Made' }).getByRole('button').first();
      await expect.poll(() => newest.textContent()).toBe(handed[0]?.suggestedFilename());
    }
    expect(readFileSync((await handed[0]?.path()) ?? '', 'utf8')).toContain('id="move-it"');
    expect(complaints).toEqual([]);
  });

  it.each([
    ['writeFileSync', 'ENOSPC', 'no room left on the disk'],
    ['openSync', 'EACCES', 'no leave to write'],
    ['fsyncSync', 'EIO', 'a write that failed (EIO)'],
  ] as const)(
    'whose disk fails in %s with %s says so in plain words, loses nothing, and saves once it can',
    async (at, code, words) => {
      // the second of each call writes the file itself; the first its version before
      await view(failingDisk(at, code, 2));
      const before = standing();
      await askWayIn('0.75');
      await save();
      await expect.poll(said).toContain(words);
      expect(await said()).toContain('job.fit.json was not saved and is as it was');
      expect(await said()).not.toMatch(/made to fail|\bat \S+:\d/);
      expect(standing()).toEqual(before);
      expect(await wayInField().inputValue()).toBe('0.75');

      await save();
      await expect.poll(said).toContain('Saved: job.fit.json.');
      expect(JSON.parse(standing()['job.fit.json'] ?? '').clearance.wayIn).toBe(0.75);
      // a refusal is all that a browser writes down of it
      expect(complaints.filter((text) => !/^Failed to load resource/.test(text))).toEqual([]);
    },
  );

  it('changed underneath by something else is not written over unless that is asked', async () => {
    await view(fs);
    const theirs = JSON.stringify({ ...JSON.parse(readFileSync(fit(), 'utf8')), title: 'Theirs' });
    await askWayIn('0.75');
    writeFileSync(fit(), theirs);
    await save();
    await page.getByRole('alertdialog').waitFor();
    expect(readFileSync(fit(), 'utf8')).toBe(theirs);
    expect(await wayInField().inputValue()).toBe('0.75');

    await page.getByRole('button', { name: 'Save over it' }).click();
    await expect.poll(said).toContain('Saved: job.fit.json.');
    expect(JSON.parse(readFileSync(fit(), 'utf8')).clearance.wayIn).toBe(0.75);
    expect(readFileSync(`${fit()}.before`, 'utf8')).toBe(theirs);
  });

  it('changed underneath is shown as it is on the disk where that is asked', async () => {
    await view(fs);
    writeFileSync(fit(), JSON.stringify({ ...JSON.parse(readFileSync(fit(), 'utf8')), title: 'Theirs' }));
    await page.getByRole('button', { name: 'Show what is on the disk' }).click();
    await expect.poll(() => page.locator('.title').textContent()).toBe('Theirs');
    expect(complaints).toEqual([]);
  });
});
