import * as fs from 'node:fs';
import { cpSync, existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import type { BrowserContext, Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { serve } from '../../../cli/view/serve.ts';
import { unzipped } from '../../support/unzipped.ts';
import { newFirefoxUser } from '../support/browser.ts';
import { newFolder } from '../support/harness.ts';
import { describeInFirefox } from '../support/in-browser.ts';
import { heard, openWorkedJob, settled, type Viewer, viewerFile } from '../support/viewer-page.ts';

const steps = ['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out', 'trial-fit'] as const;

/** By keys alone: what is put into a field by a script is no edit to Firefox, and told nobody. */
async function type(field: Locator, text: string): Promise<void> {
  await field.press('ControlOrMeta+a');
  await field.pressSequentially(text);
  await field.press('Enter');
}

describeInFirefox('the page in Firefox', () => {
  let viewer: Viewer;
  let downloads: string;
  beforeAll(async () => {
    downloads = newFolder();
    viewer = await openWorkedJob({ user: () => newFirefoxUser(downloads) });
  });
  afterAll(() => viewer?.context.close());

  const line = (step: (typeof steps)[number]) => viewer.page.locator(`.steps > [data-step="${step}"] > button.line`);
  const open = async (step: (typeof steps)[number]): Promise<void> => {
    if ((await line(step).getAttribute('aria-expanded')) === 'false') await line(step).click();
    await settled(viewer.page);
  };
  const wayIn = () => viewer.page.getByRole('slider', { name: 'The way in' });
  const stands = () => viewer.page.locator('#way-in output').textContent();
  const undo = () => viewer.page.getByRole('button', { name: 'Undo' });
  /** Firefox tells nothing of the download of a blob; what it wrote is there. */
  const downloaded = async (name: string): Promise<Buffer> => {
    const file = join(downloads, name);
    await expect
      .poll(() => existsSync(file) && readFileSync(file).byteLength > 0 && !existsSync(`${file}.part`))
      .toBe(true);
    return readFileSync(file);
  };

  it('shows the verdict of the worked job', async () => {
    expect(await viewer.context.browser()?.browserType().name()).toBe('firefox');
    expect(await line('offer-up').textContent()).toContain('FOULS on the way in');
    expect(await line('grind').textContent()).toContain('THE PLAN DOES NOT HOLD');
  });

  it.each(steps)('opens its step: %s', async (step) => {
    await open(step);
    expect(await line(step).getAttribute('aria-expanded')).toBe('true');
    expect(await viewer.page.locator('.panel').isVisible()).toBe(true);
  });

  it('moves the part as the way in is dragged, and by keys', async () => {
    const { page } = viewer;
    const box = await wayIn().boundingBox();
    if (box === null) throw new Error('the way in is not there');
    const y = box.y + box.height / 2;
    const seen = new Set<string | null>();
    await page.mouse.move(box.x + box.width * 0.7, y);
    await page.mouse.down();
    for (const share of [0.6, 0.4, 0.2]) {
      await page.mouse.move(box.x + box.width * share, y);
      await expect.poll(stands).not.toMatch(/…$/);
      seen.add(await stands());
    }
    await page.mouse.up();
    expect(seen.size).toBe(3);
    await wayIn().press('End');
    await expect.poll(stands).toContain('stand-off 0 mm: 2.9 mm clear');
  });

  it('answers a clearance that is typed, and undo brings the first answer back', async () => {
    await open('grind');
    const before = await line('grind').textContent();
    await type(viewer.page.getByRole('textbox', { name: /^home/ }), '0.5');
    await settled(viewer.page);
    await expect.poll(() => line('grind').textContent()).not.toBe(before);
    await undo().click();
    await settled(viewer.page);
    await expect.poll(() => line('grind').textContent()).toBe(before);
    expect(await undo().isEnabled()).toBe(false);
  });

  it('moves a position by its handle on the drawing', async () => {
    const { page } = viewer;
    await open('offer-up');
    const handle = page.locator('.pane').first().locator('circle.handle');
    const { x = 0, y = 0, width = 0, height = 0 } = (await handle.boundingBox()) ?? {};
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 4; i += 1) await page.mouse.move(x + width / 2 + 10 * i, y + height / 2);
    await page.mouse.up();
    await settled(page);
    await undo().click();
    await settled(page);
    expect(await undo().isEnabled()).toBe(false);
  });

  it('keeps the job: opened anew it goes on where it was', async () => {
    const { page } = viewer;
    await open('grind');
    await type(viewer.page.getByRole('textbox', { name: /^home/ }), '1.9');
    await settled(page);
    await page.reload();
    await settled(page);
    await open('grind');
    expect(await page.getByRole('textbox', { name: /^home/ }).inputValue()).toBe('1.9');
  });

  // after all that is typed: a Firefox nobody sees gives its list of downloads the keys, and the page has them back no more
  it('hands over all sheets in one PDF, and a kind of several files in one zip', async () => {
    await open('mark-out');
    const all = viewer.page.getByRole('button', { name: /^All sheets, one PDF, \d+ pages$/ });
    await all.click();
    const pages = (await PDFDocument.load(await downloaded('all-sheets.pdf'))).getPageCount();
    expect(await all.textContent()).toBe(`All sheets, one PDF, ${pages} pages`);
    await viewer.page.getByRole('button', { name: 'DXF', exact: true }).click();
    const files = unzipped(await downloaded('transfer-case-to-iron-four.dxf.zip'));
    expect(files.map(({ name }) => name)).toContain('marking-out.dxf');
  });

  it('complained of nothing, and would have been heard', async () => {
    const { page, complaints } = viewer;
    expect(complaints).toEqual([]);
    await page.evaluate(() => {
      setTimeout(() => {
        throw new Error('planted');
      });
    });
    await expect.poll(() => complaints.join()).toContain('planted');
  });
});

describeInFirefox('a fit served to the page in Firefox', () => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await newFirefoxUser(newFolder());
  });
  afterAll(() => context?.close());

  it('is opened, edited and saved in place under the policy of its server, without a complaint', async () => {
    const folder = newFolder();
    cpSync(dirname('profiles/marsh-carrier/transfer-case.fit.json'), folder, { recursive: true });
    const jobFile = join(folder, 'transfer-case.fit.json');
    const html = readFileSync(viewerFile(), 'utf8');
    const serving = await serve({ html, jobFile, disk: fs, mostBytes: 64 * 1024 * 1024 }, 0);
    const page = await context.newPage();
    const complaints: string[] = [];
    heard(page, complaints);
    await page.goto(serving.address);
    await settled(page);
    await page.locator('.steps [data-step="grind"] button.line').click();
    await type(page.getByRole('textbox', { name: /^home/ }), '0.75');
    await settled(page);
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.locator('.telling').textContent()).toContain('Saved: transfer-case.fit.json.');
    expect(JSON.parse(readFileSync(jobFile, 'utf8')).clearance.home).toBe(0.75);
    expect(complaints).toEqual([]);
    await page.close();
    await serving.close();
  });
});
