import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import type { Download } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('what there is to take along', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openViewer({ width: 390, height: 844 });
    await viewer.page.getByRole('button', { name: 'Look at a worked job' }).click();
    await settled(viewer.page);
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
});
