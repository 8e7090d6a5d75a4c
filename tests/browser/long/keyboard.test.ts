import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { unzipped } from '../../support/unzipped.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { round, type Stop, tabTo, unseenOf } from '../support/tab-stops.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

/** The least clearance the way in tells of, mm; null while it tells of none. */
const clearMm = async (said: Locator): Promise<number | null> => {
  const told = /: (\S+) mm clear$/.exec((await said.textContent()) ?? '');
  return told === null ? null : Number(told[1]);
};

describeInBrowser('the whole job without a mouse', () => {
  let viewer: Viewer;
  const unseen: Stop[] = [];
  const go = async (name: RegExp): Promise<void> => {
    unseen.push(...unseenOf(await tabTo(viewer.page, name)));
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
  });
  afterAll(() => viewer?.context.close());

  const allRound = async (): Promise<void> => {
    for (const key of ['Tab', 'Shift+Tab'] as const) {
      const { missed, stops } = await round(viewer.page, key);
      expect(missed).toEqual([]);
      expect(unseenOf(stops)).toEqual([]);
    }
  };

  it('opens the worked job from the start page, where Tab comes to everything', async () => {
    await allRound();
    await enter(/^Look at a worked job/);
    expect(await viewer.page.locator('.title').textContent()).toBe(demoJob().fit.title);
  });

  it('opens an outline and sets a point of it by its figures', async () => {
    await enter(/^Outlines/);
    await enter(/^mount boss 1 ·/);
    await enter(/^outline 1, 4 points/);
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
    expect(await page.getByRole('button', { name: 'outline 2, 3 points' }).count()).toBe(1);
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

  it('sees by arrow keys the clearance grow back before the first touch, and go again', async () => {
    const { page } = viewer;
    const said = page.locator('#way-in output');
    await enter(/^First touch/);
    await expect.poll(() => said.textContent()).toMatch(/: (fouls|touches)$/);
    await go(/^The way in$/);
    let before = 0;
    for (let i = 0; i < 4; i += 1) {
      await page.keyboard.press('ArrowLeft');
      await expect.poll(() => clearMm(said)).toBeGreaterThan(before);
      before = (await clearMm(said)) ?? 0;
    }
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('ArrowRight');
    await expect.poll(() => said.textContent()).toMatch(/: (fouls|touches)$/);
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
    const [first] = unzipped(readFileSync(file));
    expect((await PDFDocument.load(first?.data ?? '')).getPageCount()).toBeGreaterThan(0);
  });

  it('has shown at every stop where the focus was', () => {
    expect(unseen).toEqual([]);
  });

  it.each(['Outlines', 'Dowel up', 'Offer up', 'Grind', 'Mark out', 'Trial fit'])(
    'lets Tab come to everything and round again, both ways, the focus always seen: %s',
    async (step) => {
      await enter(new RegExp(`^${step}`));
      // what is foretold comes by itself, and moves all that stands below it
      if (step === 'Trial fit') await viewer.page.locator('.foretold li').first().waitFor();
      await allRound();
    },
  );
});
