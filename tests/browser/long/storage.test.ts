import { rmSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { type Harness, type HarnessWindow, harnessPage, newFolder, openHarness } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';

type KeeperWindow = HarnessWindow & { keeper: ReturnType<HarnessWindow['fettle']['keeperOf']> };

describeInBrowser('jobs in the storage of the browser', () => {
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

  /** Keeps the job as it is after so many edits, by a keeper that stays on the page. */
  const keep = (page: Page, id: string, edit: number) =>
    page.evaluate(
      ([job, count]) => {
        const here = window as unknown as KeeperWindow;
        here.keeper ??= here.fettle.keeperOf(here.fettle.options(job, () => {}));
        here.keeper.keep(here.fettle.jobAfter(count));
        return here.keeper.settled();
      },
      [id, edit] as const,
    );
  const standing = (page: Page, id: string) =>
    page.evaluate(async (job) => {
      const { openJob, editsIn, jobAfter, sameJob } = (window as unknown as HarnessWindow).fettle;
      const kept = (await openJob(job))?.kept;
      return kept === undefined ? null : sameJob(kept.job, jobAfter(editsIn(kept.job))) && editsIn(kept.job);
    }, id);

  it('are listed latest first, opened whole, and gone once they are forgotten, pictures and all', async () => {
    const page = await harnessPage(browser, harness.fromDisk);
    const seen = await page.evaluate(async () => {
      const { fettle } = window as unknown as HarnessWindow;
      const { neverStored, jobAfter: job } = fettle;
      const openedFrom = 'a.fit.json';
      await fettle.writeJob({ id: 'a', title: 'A', job: job(8), savedAt: 1, openedFrom }, neverStored);
      await fettle.writeJob({ id: 'b', title: 'B', job: job(9), savedAt: 2, openedFrom: null }, neverStored);
      const listed = await fettle.listJobs();
      const latest = await fettle.latestJob();
      await fettle.forget('b');
      const after = await fettle.latestJob();
      const whole = after !== null && fettle.sameJob(after.kept.job, job(8));
      const left = { gone: await fettle.openJob('b'), pictures: after?.known.pictures.size };
      await fettle.forget('a');
      return { listed, latest: latest?.kept.id, after: after?.kept.id, whole, left, none: await fettle.latestJob() };
    });
    expect(seen).toEqual({
      listed: [
        { id: 'b', title: 'B', savedAt: 2, openedFrom: null },
        { id: 'a', title: 'A', savedAt: 1, openedFrom: 'a.fit.json' },
      ],
      latest: 'b',
      after: 'a',
      whole: true,
      left: { gone: null, pictures: 2 },
      none: null,
    });
  });

  it('write the bytes of a picture once, however often the job changes', async () => {
    const page = await harnessPage(browser, harness.fromDisk);
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      const puts: string[] = [];
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, value, key) {
        puts.push(this.name);
        return put.call(this, value, key);
      };
      Object.assign(window, { puts });
    });
    for (const edit of [0, 1, 2, 7, 8, 14]) expect(await keep(page, 'once', edit)).toMatchObject({ state: 'kept' });
    const puts = await page.evaluate(() => (window as unknown as { puts: string[] }).puts);
    // one at the start, and one each for the pictures that the seventh and the fourteenth edit brought
    expect(puts.filter((store) => store === 'pictures').length).toBe(3);
    expect(puts.filter((store) => store === 'jobs').length).toBe(6);
    expect(await standing(page, 'once')).toBe(14);
  });

  it('that find no room are said to be unkept, harm no other, and are kept once there is room', async () => {
    const [first, second] = [await harnessPage(browser, harness.served), await harnessPage(browser, harness.served)];
    const session = await browser.newCDPSession(first);
    const origin = new URL(harness.served).origin;
    // room for one large picture and not for two
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 10_000_000 });
    expect(await keep(first, 'fits', 1)).toMatchObject({ state: 'kept' });
    expect(await keep(second, 'full', 1)).toMatchObject({ state: 'cannot-keep', why: 'no-room' });
    expect(await keep(second, 'full', 2)).toMatchObject({ state: 'cannot-keep', why: 'no-room' });
    expect([await standing(first, 'fits'), await standing(first, 'full')]).toEqual([1, null]);
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    const later = await second.evaluate(() => {
      const { keeper } = window as unknown as KeeperWindow;
      keeper.retry();
      return keeper.settled();
    });
    expect(later).toMatchObject({ state: 'kept' });
    expect(await standing(first, 'full')).toBe(2);
  });

  it('are said to be unkept where the page may have no storage, and are kept once it may', async () => {
    const page = await harnessPage(browser, harness.served);
    await page.evaluate(() => {
      const { open } = IDBFactory.prototype;
      IDBFactory.prototype.open = () => {
        IDBFactory.prototype.open = open;
        throw new DOMException('denied', 'SecurityError');
      };
    });
    expect(await keep(page, 'denied', 1)).toMatchObject({ state: 'cannot-keep', why: 'not-allowed' });
    expect(await keep(page, 'denied', 2)).toMatchObject({ state: 'kept' });
    expect(await standing(page, 'denied')).toBe(2);
  });
});
