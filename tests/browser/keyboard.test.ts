import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../viewer/job/demo-job.ts';
import { describeInBrowser } from './support/in-browser.ts';
import { openViewer, settled, type Viewer } from './support/viewer-page.ts';

interface Stop {
  readonly name: string;
  /** Width in pixels of the ring round what has the focus; none is 0, and so is one out of sight. */
  readonly ringPx: number;
  /** Whether anything has the focus: between the last stop and the first nothing need have. */
  readonly any: boolean;
}

/** What has the focus, by its label. */
const focused = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return { name: '', ringPx: 0, any: false };
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const label = element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent;
    const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
    const inSight = Math.min(width, height) > 1 && right > 0 && bottom > 0 && left < innerWidth && top < innerHeight;
    const ringPx = outlineStyle === 'none' || !inSight ? 0 : Number.parseFloat(outlineWidth);
    return { name: label || element.outerHTML.slice(0, 120), ringPx, any: true };
  });

/** What can be used on the page now, in a global of the page: all that Tab must come to. */
const markUsable = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const usable = [
      ...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex="0"]'),
    ].filter((each) => each.checkVisibility({ visibilityProperty: true }) && !each.matches(':disabled'));
    // of radio buttons Tab comes to the chosen one alone; the arrow keys go on from there
    const stops = usable.filter((each) => !each.matches('[type="radio"]:not(:checked)'));
    Object.assign(window, { stops });
    return stops.length;
  });

const stopNow = (page: Page): Promise<number> =>
  // @ts-expect-error put there by the function above
  page.evaluate(() => window.stops.indexOf(document.activeElement));

/** Goes all round by one key until it is where it began: what it did not come to, and every stop. */
async function round(page: Page, key: 'Tab' | 'Shift+Tab'): Promise<{ missed: string[]; stops: Stop[] }> {
  const count = await markUsable(page);
  const came: number[] = [];
  const stops: Stop[] = [];
  for (let i = 0; i < 2 * count + 20; i += 1) {
    await page.keyboard.press(key);
    const at = await stopNow(page);
    if (at === came[0]) break;
    if (at >= 0) came.push(at);
    stops.push(await focused(page));
  }
  const missed = await page.evaluate(
    // @ts-expect-error put there by the function above
    (reached) => window.stops.filter((_, i) => !reached.includes(i)).map((each) => each.outerHTML.slice(0, 160)),
    came,
  );
  return { missed, stops };
}

const unseenOf = (stops: readonly Stop[]): Stop[] => stops.filter(({ any, ringPx }) => any && !(ringPx >= 2));

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
  }, 120_000);
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
    expect((await PDFDocument.load(readFileSync(file))).getPageCount()).toBeGreaterThan(0);
  });

  it('has shown at every stop where the focus was', () => {
    expect(unseen).toEqual([]);
  });

  it.each(['Outlines', 'Dowel up', 'Offer up', 'Grind', 'Mark out'])(
    'lets Tab come to everything and round again, both ways, the focus always seen: %s',
    async (step) => {
      await enter(new RegExp(`^${step}`));
      await allRound();
    },
  );
});
