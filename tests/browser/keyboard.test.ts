import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from './support/in-browser.ts';
import { openViewer, settled, type Viewer } from './support/viewer-page.ts';

interface Stop {
  readonly name: string;
  /** Width in pixels of the ring round what has the focus; none is 0. */
  readonly ringPx: number;
}

/** What has the focus, by its label; empty where nothing has. */
const focused = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return { name: '', ringPx: 0 };
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const label = element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent;
    return { name: label ?? '', ringPx: outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth) };
  });

/** Goes on by Tab until a name is reached; the stops on the way, which every eye must be able to follow. */
async function tabTo(page: Page, name: RegExp): Promise<Stop[]> {
  const stops: Stop[] = [];
  for (let i = 0; i < 150; i += 1) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    stops.push(stop);
    if (name.test(stop.name)) return stops;
  }
  throw new Error(`Tab does not come to ${name}`);
}

describeInBrowser('the whole job without a mouse', () => {
  let viewer: Viewer;
  const unseen: Stop[] = [];
  const go = async (name: RegExp): Promise<void> => {
    unseen.push(...(await tabTo(viewer.page, name)).filter((stop) => stop.name !== '' && !(stop.ringPx >= 2)));
  };
  const enter = async (name: RegExp): Promise<void> => {
    await go(name);
    await viewer.page.keyboard.press('Enter');
    await settled(viewer.page);
  };
  const lineOf = (step: string) => viewer.page.locator(`li[data-step="${step}"] .line span`);
  const type = async (field: RegExp, text: string): Promise<void> => {
    await go(field);
    await viewer.page.keyboard.press('Control+A');
    await viewer.page.keyboard.type(text);
    await viewer.page.keyboard.press('Enter');
    await settled(viewer.page);
  };

  beforeAll(async () => {
    viewer = await openViewer();
    await enter(/^Look at a worked job/);
  }, 120_000);
  afterAll(() => viewer?.context.close());

  it('opens an outline and sets a point of it by its figures', async () => {
    await enter(/^Outlines/);
    await enter(/^mount boss 1 ·/);
    await enter(/^1: 4 points/);
    await type(/^Point 1, x$/, '151.5');
    expect(await viewer.page.getByLabel('Point 1, x').inputValue()).toBe('151.5');
  });

  it('traces an outline by the figures of its points, and closes it', async () => {
    const { page } = viewer;
    await enter(/^mount boss 2 ·/);
    await enter(/^Trace an outline/);
    for (const [x, y] of [
      ['200', '-100'],
      ['210', '-100'],
      ['210', '-90'],
    ] as const) {
      await go(/^x$/);
      await page.keyboard.type(x);
      await page.keyboard.press('Tab');
      await page.keyboard.type(y);
      await page.keyboard.press('Enter');
    }
    await enter(/^Close it$/);
    expect(await page.getByRole('button', { name: '2: 3 points' }).count()).toBe(1);
  });

  it('takes a pair of bolts away, and undo brings it back', async () => {
    await enter(/^Dowel up/);
    await enter(/^Take away the pair B5–H5/);
    await expect.poll(() => lineOf('dowel-up').textContent()).toContain('5 of 5 bolts');
    await enter(/^Undo/);
    await expect.poll(() => lineOf('dowel-up').textContent()).toContain('5 of 6 bolts');
  });

  it('offers the part up along the way in', async () => {
    const { page } = viewer;
    await enter(/^Offer up/);
    await go(/^The way in$/);
    await page.keyboard.press('Home');
    const said = page.locator('#way-in output');
    await expect.poll(() => said.textContent()).toContain('leg 1');
    await page.keyboard.press('End');
    await expect.poll(() => said.textContent()).toContain('stand-off 0 mm');
  });

  it('asks for another clearance and is answered with another cut', async () => {
    await enter(/^Grind/);
    const before = await lineOf('grind').textContent();
    await type(/^home/, '1.5');
    await expect.poll(() => lineOf('grind').textContent()).not.toBe(before);
  });

  it('prints the sheets', async () => {
    const { page } = viewer;
    await enter(/^Mark out/);
    await go(/^PDF/);
    const download = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    const file = await (await download).path();
    expect((await PDFDocument.load(readFileSync(file))).getPageCount()).toBeGreaterThan(0);
  });

  it('has shown at every stop where the focus was, and let Tab go all round', async () => {
    expect(unseen).toEqual([]);
    await go(/^Save the job/);
    await go(/^From the side/);
    await go(/^Save the job/);
  });
});
