import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Random } from '../../support/random.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

/** What the page did with its workers, and when, ms: asked one for something, or told it to drop that. */
interface Deed {
  readonly what: string;
  readonly at: number;
}

/** Keeps account of the workers. Runs in the page, before all else. */
function watchWorkers(): void {
  const deeds: Deed[] = [];
  window.Worker = class extends Worker {
    override postMessage(call: unknown): void {
      const { question } = call as { question?: { kind: string } };
      deeds.push({ what: question?.kind ?? 'drop', at: performance.now() });
      super.postMessage(call);
    }
  };
  Object.assign(window, { deeds });
}

const deedsOf = (page: Page): Promise<readonly Deed[]> =>
  page.evaluate(() => (window as unknown as { deeds: Deed[] }).deeds.splice(0));

const isAskedFor = (page: Page, which: string): Promise<boolean> =>
  page.evaluate((wanted) => (window as unknown as { deeds: Deed[] }).deeds.some(({ what }) => what === wanted), which);

/** Half a second, and as much again for a machine that is busy with other tests. */
const mostMs = 1000;

describeInBrowser('work that goes on for seconds in one piece, stopped on the page', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob({ first: watchWorkers });
    await viewer.page.locator('.steps [data-step="grind"] button.line').click();
  }, 120_000);
  afterAll(() => viewer?.context.close());

  const line = (): Promise<string | null> =>
    viewer.page.locator('[data-step="grind"] .line span').first().textContent();

  const ask = async (clearance: number): Promise<void> => {
    const home = viewer.page.getByRole('textbox', { name: /^home/ });
    await home.fill(String(clearance));
    await home.press('Enter');
  };

  it('gives way to a newer question within half a second, at any moment of it', async () => {
    const { page } = viewer;
    const random = new Random(7);
    await ask(20);
    await expect.poll(() => isAskedFor(page, 'work')).toBe(true);
    await deedsOf(page);
    const waitsMs: number[] = [];
    for (let i = 0; i < 12; i += 1) {
      await page.waitForTimeout(random.between(500, 8000));
      await ask(20 + 0.1 * (1 + i));
      await expect.poll(() => isAskedFor(page, 'work')).toBe(true);
      const deeds = await deedsOf(page);
      const [dropped, asked] = ['drop', 'work'].map((which) => deeds.find(({ what }) => what === which)?.at);
      if (dropped && asked) waitsMs.push(asked - dropped);
    }
    expect(Math.max(...waitsMs)).toBeLessThan(mostMs);
    expect(waitsMs.length).toBeGreaterThan(6);
  });

  it('ends when it is told to, and what was known stays', async () => {
    const { page } = viewer;
    await page.waitForTimeout(5000);
    const before = await line();
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => page.evaluate(() => 'working' in document.body.dataset)).toBe(false);
    await page.waitForTimeout(1000);
    expect(await line()).toBe(before);
  });

  it('and the next question is answered as if nothing had been', async () => {
    await ask(2);
    await settled(viewer.page);
    const said = await line();
    await ask(3);
    await settled(viewer.page);
    await ask(2);
    await settled(viewer.page);
    expect(await line()).toBe(said);
    expect(viewer.complaints).toEqual([]);
  });
});
