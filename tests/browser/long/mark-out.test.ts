import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import type { Download } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { unzipped } from '../../support/unzipped.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

/** How much longer than true a PDF's first page draws, across and up. */
async function stretchOf(download: Download): Promise<number[]> {
  const written = readFileSync(await download.path(), 'latin1');
  return [1, 4].map((i) => Number(/([\d.]+) (0\.0+) (0\.0+) ([\d.]+) \S+ \S+ cm \/Drawing/.exec(written)?.[i]));
}

describeInBrowser('what there is to take along', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob({ size: { width: 390, height: 844 } });
    await viewer.page.locator('.steps [data-step="mark-out"] button.line').click();
    await settled(viewer.page);
  }, 120_000);
  afterAll(() => viewer?.context.close());

  const all = () => viewer.page.getByRole('button', { name: /^All sheets, one PDF, \d+ pages$/ });
  const pagesOf = async (download: Download): Promise<number> =>
    (await PDFDocument.load(readFileSync(await download.path()))).getPageCount();

  it('is first of all one PDF of all sheets, with as many pages as it says', async () => {
    const { page } = viewer;
    const first = page.locator('.downloads button').first();
    await expect.poll(() => first.textContent()).toMatch(/^All sheets, one PDF, \d+ pages$/);
    const { height } = (await first.boundingBox()) ?? { height: 0 };
    expect(height).toBeGreaterThanOrEqual(44);
    const coming = page.waitForEvent('download');
    await first.click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe('all-sheets.pdf');
    expect(`All sheets, one PDF, ${await pagesOf(download)} pages`).toBe(await first.textContent());
  });

  it('is listed once it is made, and saved again at a tap', async () => {
    const made = viewer.page.getByRole('list', { name: 'Made' }).getByRole('button');
    expect(await made.allTextContents()).toEqual(['all-sheets.pdf']);
    const again = viewer.page.waitForEvent('download');
    await made.first().click();
    expect((await again).suggestedFilename()).toBe('all-sheets.pdf');
  });

  it('is one zip where a kind takes several files, the very files of the command, each told by its name', async () => {
    const { page } = viewer;
    const folder = folderWith();
    await runCli('markout', 'profiles/marsh-carrier/transfer-case.fit.json', '-o', folder);
    const written = readdirSync(folder).filter((name) => name !== 'all-sheets.pdf');
    const handed: Download[] = [];
    page.on('download', (download) => handed.push(download));
    const took: string[] = [];
    for (const [button, ending] of [
      ['PDF, true to scale', 'pdf'],
      ['SVG, true to scale', 'svg'],
      ['DXF', 'dxf'],
      ['Marking-out table', 'csv'],
    ] as const) {
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: button, exact: true }).click();
      const name = `transfer-case-to-iron-four.${ending}.zip`;
      const download = await coming;
      expect(download.suggestedFilename()).toBe(name);
      const files = unzipped(readFileSync(await download.path()));
      const names = files.map((file) => file.name);
      expect(
        await page
          .getByRole('list', { name: `In ${name}` })
          .getByRole('listitem')
          .allTextContents(),
      ).toEqual(names);
      for (const { name: file, data } of files) expect(readFileSync(join(folder, file)).equals(data), file).toBe(true);
      took.push(...names);
    }
    expect(took.sort()).toEqual(written.sort());
    expect(handed.length).toBe(4);
  });

  it('is one file as it is where there is but one of its kind', async () => {
    const { page } = viewer;
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Drawing', exact: true }).click();
    expect((await coming).suggestedFilename()).toBe('transfer-case-to-iron-four.svg');
  });

  it('shows at once that it is being made', async () => {
    const coming = viewer.page.waitForEvent('download');
    const atOnce = await all().evaluate(async (button: HTMLButtonElement) => {
      button.click();
      await new Promise((done) => requestAnimationFrame(done));
      return [button.ariaBusy, document.querySelector('.downloads [role="status"]')?.textContent];
    });
    expect(atOnce).toEqual(['true', 'Making it']);
    await coming;
    await expect.poll(() => all().getAttribute('aria-busy')).toBe('false');
  });

  it('says why where the browser does not take it, and saves it when asked again', async () => {
    const { page } = viewer;
    await page.evaluate(() => {
      const { createObjectURL } = URL;
      URL.createObjectURL = () => {
        URL.createObjectURL = createObjectURL;
        throw new Error('no room left');
      };
    });
    await all().click();
    const said = page.locator('.downloads [role="alert"]');
    await expect
      .poll(() => said.textContent())
      .toBe('all-sheets.pdf was not saved: no room left. Tap its name to try again.');
    const again = page.waitForEvent('download');
    await page.getByRole('list', { name: 'Made' }).getByRole('button').first().click();
    await again;
    expect(await said.count()).toBe(0);
    expect(viewer.complaints).toEqual([]);
  });

  const taken = async (): Promise<Download> => {
    const coming = viewer.page.waitForEvent('download');
    await all().click();
    return coming;
  };

  it('says at the field what no printer makes of a bar, and makes nothing by it', async () => {
    const { page } = viewer;
    const across = page.getByRole('textbox', { name: /^along the short side/ });
    await across.fill('14.92');
    await across.press('Enter');
    const said = page.locator('label.field', { has: across }).getByRole('alert');
    await expect
      .poll(() => said.textContent())
      .toBe('Not taken. A bar reads 140 to 160 mm; else the page was fitted to the paper.');
    expect(await across.getAttribute('aria-invalid')).toBe('true');
    expect(await stretchOf(await taken())).toEqual([1, 1]);
  });

  it('takes the printer’s error off by what the bars read', async () => {
    const { page } = viewer;
    for (const [name, reading] of [
      [/^along the short side/, '149,2'],
      [/^along the long side/, '150.4'],
    ] as const) {
      const field = page.getByRole('textbox', { name });
      await field.fill(reading);
      await field.press('Enter');
    }
    expect(await page.getByRole('alert').count()).toBe(0);
    const [x = 0, y = 0] = await stretchOf(await taken());
    expect(x).toBeCloseTo(150 / 149.2, 8);
    expect(y).toBeCloseTo(150 / 150.4, 8);
  });

  it('is mirrored where that is asked, and keeps the readings while another step is open', async () => {
    const { page } = viewer;
    await page.locator('.steps [data-step="grind"] button.line').click();
    await page.locator('.steps [data-step="mark-out"] button.line').click();
    expect(await page.getByRole('textbox', { name: /^along the short side/ }).inputValue()).toBe('149.2');
    await page.getByRole('checkbox', { name: /^mirrored/ }).check();
    expect((await taken()).suggestedFilename()).toBe('all-sheets-mirrored.pdf');
    expect(viewer.complaints).toEqual([]);
  });
});
