import { rmSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { type Harness, type HarnessWindow, harnessPage, newFolder, openHarness } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';

type TabWindow = HarnessWindow & {
  tab: { hold: Awaited<ReturnType<HarnessWindow['fettle']['holdJob']>>; told: string[] };
};

describeInBrowser('two tabs on one job', () => {
  const folder = newFolder();
  let harness: Harness;
  let browser: BrowserContext;
  beforeAll(async () => {
    harness = await openHarness();
    browser = await launchBrowser(folder);
  });
  afterEach(() => Promise.all(browser.pages().map((page) => page.close())));
  afterAll(async () => {
    await browser.close();
    harness.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  const opens = { disk: () => harness.fromDisk, served: () => harness.served };

  /** A tab that holds a job, keeps a list of what it is told, and flushes by saying so. */
  async function tabOn(address: string, { asleep = false } = {}): Promise<Page> {
    const page = await harnessPage(browser, address);
    await page.evaluate(async (sleeps) => {
      const told: string[] = [];
      const hold = await (window as unknown as TabWindow).fettle.holdJob('job', {
        onHeld: (held) => told.push(held),
        onKept: () => told.push('kept'),
        beforeGiving: async () => {
          told.push('asked');
          if (sleeps) await new Promise(() => {});
        },
      });
      Object.assign(window, { tab: { hold, told } });
    }, asleep);
    return page;
  }
  const held = (page: Page) => page.evaluate(() => (window as unknown as TabWindow).tab.hold.held());
  const told = (page: Page) => page.evaluate(() => (window as unknown as TabWindow).tab.told);
  const takeOver = (page: Page) => page.evaluate(() => (window as unknown as TabWindow).tab.hold.takeOver());
  const becomes = (page: Page, what: string) =>
    page.waitForFunction((wanted) => (window as unknown as TabWindow).tab.told.at(-1) === wanted, what);

  it.each(['disk', 'served'] as const)('the second knows of the first, and of what it keeps (%s)', async (from) => {
    const first = await tabOn(opens[from]());
    const second = await tabOn(opens[from]());
    expect([await held(first), await held(second)]).toEqual(['here', 'elsewhere']);
    await first.evaluate(() => (window as unknown as TabWindow).tab.hold.tellKept());
    await becomes(second, 'kept');
    expect(await told(first)).toEqual([]);
  });

  it('the second takes over once the first has put its work on the disk; the first is told, and can take it back', async () => {
    const first = await tabOn(harness.fromDisk);
    const second = await tabOn(harness.fromDisk);
    await takeOver(second);
    await becomes(first, 'elsewhere');
    expect([await held(first), await held(second)]).toEqual(['elsewhere', 'here']);
    expect(await told(first)).toEqual(['asked', 'elsewhere']);
    await takeOver(first);
    await becomes(second, 'elsewhere');
    expect(await told(first)).toEqual(['asked', 'elsewhere', 'here']);
  });

  it('a tab that sleeps is not waited for', async () => {
    const first = await tabOn(harness.fromDisk, { asleep: true });
    const second = await tabOn(harness.fromDisk);
    await takeOver(second);
    expect(await held(second)).toBe('here');
    await becomes(first, 'elsewhere');
  });

  it('the second has the job once the first is closed, or lets it go', async () => {
    const first = await tabOn(harness.fromDisk);
    const second = await tabOn(harness.fromDisk);
    const third = await tabOn(harness.fromDisk);
    await first.close();
    await becomes(second, 'here');
    expect(await held(third)).toBe('elsewhere');
    await second.evaluate(() => (window as unknown as TabWindow).tab.hold.release());
    await becomes(third, 'here');
  });

  it('tabs on different jobs do not know each other', async () => {
    const first = await tabOn(harness.fromDisk);
    const other = await harnessPage(browser, harness.fromDisk);
    const alone = await other.evaluate(async () => {
      const quiet = { onHeld: () => {}, onKept: () => {}, beforeGiving: async () => {} };
      return (await (window as unknown as HarnessWindow).fettle.holdJob('another', quiet)).held();
    });
    expect([await held(first), alone]).toEqual(['here', 'here']);
  });

  it('without locks none writes over the other: the one that comes too late is told, and keeps its job', async () => {
    await browser.addInitScript(() => Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined }));
    const [first, second] = [await tabOn(harness.served), await tabOn(harness.served)];
    expect([await held(first), await held(second)]).toEqual(['here', 'here']);
    const keep = (page: Page, edit: number, id = 'shared') =>
      page.evaluate(
        async ([count, job]) => {
          const { fettle } = window as unknown as HarnessWindow;
          const known = (await fettle.openJob('shared'))?.known ?? fettle.neverStored;
          const options = fettle.options(job, () => {});
          const keeper = fettle.keeperOf(job === 'shared' ? { ...options, known } : options);
          Object.assign(window, { keeper });
          keeper.keep(fettle.jobAfter(count));
          return keeper.settled();
        },
        [edit, id] as const,
      );
    const more = (page: Page, edit: number) =>
      page.evaluate((count) => {
        const { fettle, keeper } = window as unknown as HarnessWindow & {
          keeper: ReturnType<HarnessWindow['fettle']['keeperOf']>;
        };
        keeper.keep(fettle.jobAfter(count));
        return keeper.settled();
      }, edit);
    const standing = (page: Page, id: string) =>
      page.evaluate(async (job) => {
        const { openJob, editsIn } = (window as unknown as HarnessWindow).fettle;
        const opened = await openJob(job);
        return opened === null ? null : editsIn(opened.kept.job);
      }, id);

    expect(await keep(first, 1)).toMatchObject({ state: 'kept' });
    expect(await keep(second, 2)).toMatchObject({ state: 'kept' });
    expect(await more(first, 3)).toMatchObject({ state: 'cannot-keep', why: 'kept-elsewhere' });
    expect(await standing(first, 'shared')).toBe(2);
    expect(await keep(first, 3, 'a-copy')).toMatchObject({ state: 'kept' });
    expect([await standing(first, 'a-copy'), await standing(first, 'shared')]).toEqual([3, 2]);
  });
});
