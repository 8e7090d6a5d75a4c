import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from './support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from './support/viewer-page.ts';

/** What was seen of the page's workers, and of what it painted because one said how far it is. */
interface WorkerLog {
  alive: number;
  atOnce: number;
  progress: number;
  bar: number;
  readonly elsewhere: string[];
}

/** Counts the workers that are there at once, and what progress changes in and outside of the bar. Runs in the page, before all else. */
function watchWorkers(): void {
  const seen: WorkerLog = { alive: 0, atOnce: 0, progress: 0, bar: 0, elsewhere: [] };
  let isProgress = false;
  window.Worker = class extends Worker {
    constructor(...made: ConstructorParameters<typeof Worker>) {
      super(...made);
      seen.alive += 1;
      seen.atOnce = Math.max(seen.atOnce, seen.alive);
      super.addEventListener('message', ({ data }) => {
        isProgress = data.reply?.kind === 'progress';
        if (isProgress) seen.progress += 1;
      });
    }
    // one that does not let go of a question in time is ended, and another takes its place
    override terminate(): void {
      super.terminate();
      seen.alive -= 1;
    }
    // what the page paints upon a message is done before the next listener hears of it
    override addEventListener(type: string, listener: EventListenerOrEventListenerObject): void {
      super.addEventListener(type, listener);
      if (type !== 'message') return;
      super.addEventListener('message', () => {
        isProgress = false;
      });
    }
  };
  new MutationObserver((changes) => {
    if (!isProgress) return;
    for (const { target, type } of changes) {
      const element = target instanceof Element ? target : target.parentElement;
      if (element?.closest('.telling [role="status"]') !== null) seen.bar += 1;
      else seen.elsewhere.push(`${type} of ${element.outerHTML.slice(0, 100)}`);
    }
  }).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  Object.assign(window, { seen });
}

describeInBrowser('the workers of the page', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob({ first: watchWorkers });
  }, 120_000);
  afterAll(() => viewer?.context.close());

  const seen = (): Promise<WorkerLog> => viewer.page.evaluate(() => (window as unknown as { seen: WorkerLog }).seen);
  const open = (step: string): Promise<void> => viewer.page.locator(`.steps [data-step="${step}"] button.line`).click();

  it('say how far they are, and the page paints its bar and nothing else', async () => {
    const { progress, bar, elsewhere } = await seen();
    expect(progress).toBeGreaterThan(2);
    expect(bar).toBeGreaterThan(2);
    expect(elsewhere).toEqual([]);
  });

  it('are two at most, whatever is done: the way in dragged, a clearance changed', async () => {
    const { page } = viewer;
    const box = await page.getByRole('slider', { name: 'The way in' }).boundingBox();
    if (box === null) throw new Error('the way in is not there');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 20; i += 1) await page.mouse.move(box.x + box.width / 2 + 5 * i, box.y + box.height / 2);
    await page.mouse.up();
    await open('grind');
    await settled(page);
    const home = page.getByRole('textbox', { name: /^home/ });
    await home.fill('1.5');
    await home.press('Enter');
    await settled(page);
    expect((await seen()).atOnce).toBe(2);
    expect((await seen()).elsewhere).toEqual([]);
  }, 120_000);

  it('put nothing into words that is folded away', async () => {
    const { page } = viewer;
    expect(await page.locator('.panel details pre').count()).toBe(0);
    await page.locator('.panel summary').click();
    expect(await page.locator('.panel details pre').textContent()).toContain('1.5 mm');
  });

  it('are still two when sheets are made, and a sheet is not lost to an edit that comes after it', async () => {
    const { page } = viewer;
    await open('mark-out');
    await page
      .getByRole('img', { name: /pages?$/ })
      .first()
      .waitFor();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'PDF, true to scale' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect((await download).suggestedFilename()).toMatch(/\.pdf\.zip$/);
    await settled(page);
    expect((await seen()).atOnce).toBe(2);
  }, 120_000);

  it('are still two when files are brought in', async () => {
    const { page } = viewer;
    await open('outlines');
    const buffer = Buffer.from('section,x [mm],y [mm],depth from,depth to\nlug,300,0,0,10\n,310,0,,\n,310,10,,\n');
    await page.locator('.opener input[multiple]').setInputFiles({ name: 'lug.csv', mimeType: 'text/csv', buffer });
    await expect.poll(() => page.locator('.steps').textContent()).toContain('lug');
    await settled(page);
    expect((await seen()).atOnce).toBe(2);
    expect(viewer.complaints).toEqual([]);
  }, 120_000);
});
