import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { writeReport } from '../../../cli/report.ts';
import { heard as listened, runCli } from '../../support/run-cli.ts';
import { newFolder } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { heard, openViewer, toldInFull, type Viewer, viewerFile } from '../support/viewer-page.ts';

const fit = 'profiles/marsh-carrier/transfer-case.fit.json';

/** Opens a report from disk and goes on to the viewer it holds; both, and what was asked of anywhere meanwhile. */
async function opened({ context, complaints }: Viewer, file: string) {
  const report = await context.newPage();
  const requests: string[] = [];
  report.on('request', (request) => requests.push(request.url()));
  heard(report, complaints);
  await report.goto(pathToFileURL(file).href);
  await report.getByRole('button', { name: 'Move it yourself' }).click();
  const frame = report.frameLocator('iframe[title="The job in the viewer"]');
  const line = (step: string) => frame.locator(`.steps [data-step="${step}"] button.line`);
  await frame.locator('body.has-job:not([data-working])').waitFor();
  await line('grind').filter({ hasNotText: 'not yet' }).waitFor();
  return { report, frame, line, requests };
}

describeInBrowser('a report opened from disk', () => {
  const folder = newFolder();
  const file = join(folder, 'report.html');
  let viewer: Viewer;
  let pages: Awaited<ReturnType<typeof opened>>;

  beforeAll(async () => {
    viewer = await openViewer();
    await listened(async () => writeReport(fit, file, readFileSync(viewerFile(), 'utf8')));
    pages = await opened(viewer, file);
  });
  afterAll(() => viewer?.context.close());

  it('opens the viewer with its job, fetching nothing on the way', async () => {
    expect(await pages.frame.locator('.title').textContent()).toBe(JSON.parse(readFileSync(fit, 'utf8')).title);
    expect(pages.requests.filter((address) => !/^(file|blob|data):/.test(address))).toEqual([]);
  });

  it('says what the viewer says: the verdict, the plan and the least clearance home and on the way in', async () => {
    const { report, frame, line } = pages;
    expect(await line('offer-up').locator('span').textContent()).toBe(await report.locator('.verdict').textContent());
    expect(await line('grind').locator('span').textContent()).toBe(await report.locator('.plan').textContent());
    const said = await toldInFull(frame);
    // what to do next names the file, which the two know by names of their own
    const answer = (text: string): string => text.split('\nNext\n')[0] ?? '';
    expect(answer(said)).toBe(answer((await runCli('check', fit)).stdout));
    const cells = await report.locator('header table td').allTextContents();
    const figures = cells.filter((text) => /\d/.test(text));
    expect(figures.length).toBeGreaterThan(3);
    for (const figure of figures) expect(said).toContain(figure);
  });

  it('lets the reader move the part along the way in, and keeps the job in the browser', async () => {
    const slider = pages.frame.getByRole('slider', { name: 'The way in' });
    await slider.press('Home');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toContain('leg 1, turn 22.0°, stand-off 190 mm');
    expect(await pages.frame.getByRole('status').first().textContent()).toBe('Kept in this browser.');
  });

  it('holds a viewer that makes a report of its own, which holds one again', async () => {
    await pages.line('mark-out').click();
    const coming = pages.report.waitForEvent('download');
    await pages.frame.getByRole('button', { name: 'Report' }).click();
    const second = join(folder, 'second.html');
    await (await coming).saveAs(second);
    const again = await opened(viewer, second);
    for (const words of ['.verdict', '.plan', 'header table']) {
      expect(await again.report.locator(words).textContent()).toBe(await pages.report.locator(words).textContent());
    }
    expect(await again.line('offer-up').textContent()).toBe(await pages.line('offer-up').textContent());
  });

  it('goes back to itself, and prints without the button or the viewer', async () => {
    const { report } = pages;
    await report.getByRole('button', { name: 'Back to the report' }).click();
    expect(await report.getByRole('dialog').count()).toBe(0);
    await report.emulateMedia({ media: 'print' });
    expect(await report.getByText('Move it yourself').isVisible()).toBe(false);
  });

  it('is a page without the button where scripts are off', async () => {
    const still = await viewer.context.browser()?.newContext({ javaScriptEnabled: false });
    const page = await still?.newPage();
    await page?.goto(pathToFileURL(file).href);
    expect(await page?.locator('.verdict').isVisible()).toBe(true);
    expect(await page?.getByText('Move it yourself').isVisible()).toBe(false);
    await still?.close();
  });

  it('complained of nothing', () => {
    expect(viewer.complaints).toEqual([]);
  });
});
